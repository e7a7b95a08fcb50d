/*
 * Words of the command line that are not words of the domain: headings, one-line statements, and the help texts. Examples are run
 * by the tests as they stand here, from the folder of the program.
 */

/** Heads of tables and lists. */
export const headings = {
  unit: 'Unit',
  chain: 'Chain',
  position: 'Position',
  counted: 'Counted as',
  display: 'Display',
  why: 'Why',
  cable: 'Cable',
  from: 'From',
  to: 'To',
  outbound: 'Outbound',
  back: 'Return',
  atUpperPlug: 'At upper plug',
  atUpperPort: 'At upper port',
  atLowerPlug: 'At lower plug',
  atLowerPort: 'At lower port',
  lampOutbound: 'Lamp, outbound',
  lampReturn: 'Lamp, return',
  severity: 'How bad',
  where: 'Where',
  what: 'What',
  whatToDo: 'What to do',
  likely: 'Likely',
  item: 'Item',
  modes: 'What is wrong with it',
  group: 'Group',
  seen: 'Seen',
  predicted: 'Predicted',
  fits: 'Fits',
  suspects: 'Suspects',
  reports: 'Report of the controller',
  behaviours: 'What the evidence says of unknown behaviour',
  notes: 'Notes',
  cautions: 'Before you act',
  usage: 'Use',
  commands: 'Commands',
  options: 'Options',
  examples: 'Examples',
  exitCodes: 'Exit codes',
} as const;

/** Single statements in answers. */
export const statements = {
  simulated: 'Simulated, not seen. Faults:',
  noFaults: 'none',
  passes: 'passes',
  passesNothing: 'nothing valid',
  absentNow: ', gone when the displays are read',
  beforeTrip: 'Before the trip',
  sinceTrip: 'Since the trip',
  notHalted: 'the machine is not halted: there was no trip',
  lightWay: (chain: string, when: string) => `The light’s way along ${chain}, ${when}`,
  lightLooks: 'Light, as it would be seen now. Never look into a fibre end or an optical port.',
  seenAgainst: (hypothesis: string) => `What was seen, against what this predicts: ${hypothesis}`,
  takenOnset: (onset: string) => `When the fault came is not known; it fits best if ${onset}`,
  takenAsGone: 'What comes and goes is taken as gone here',
  takenAsLikely: 'Where the behaviour of a type is not known, its likeliest values are taken',
  fits: '=',
  against: '≠',
  andMore: (count: number) => `${count} more`,
  notLookedAt: 'not looked at',
  basedOn: (what: string) => `Worked out from ${what}.`,
  moreSuspects: (count: number, share: string) => `${count} more, each ${share} or less. Show more with --top.`,
  moreAlike: (count: number) => `… and ${count} more of the kind.`,
  remarks: (file: string, findings: string) => ({ title: `The cabinet has ${findings}`, whatToDo: `See linkwright check ${file}` }),
  nothingBroken: (probability: string) => `Nothing is broken at all: ${probability}.`,
  haltedNotSaid:
    'Nobody said whether the control is halted by an alarm of a chain. If it is, add --halted yes: then something must be broken.',
  inSnapshots: (what: string, snapshots: string) => `${what} in ${snapshots}`,
} as const;

/** How a run ends, by exit code. */
export const exitCodeWords = {
  0: 'done, and nothing stands against it',
  1: 'findings: problems in a cabinet, cabinets that differ, or what was seen contradicts itself',
  2: 'the command line, or a line of a batch, was not understood',
  3: 'a file could not be read, or a file or the answer not be written',
} as const;

export interface OptionWords {
  /** What stands for the value in a usage line; empty for a flag. */
  readonly value: string;
  readonly meaning: string;
}

export interface CommandWords {
  readonly summary: string;
  readonly usage: readonly string[];
  readonly about: readonly string[];
  readonly options: Readonly<Record<string, OptionWords>>;
  readonly examples: readonly { readonly says: string; readonly line: string }[];
}

const json: OptionWords = { value: '', meaning: 'Answer as JSON for programs; its fields stand in engine/cli/JSON.md.' };
const batch: OptionWords = {
  value: 'LINES',
  meaning: 'One JSON object on each line of this file, one answer on each line; “-” reads standard input.',
};

const aboutNames =
  'A unit is named by its designation (the sign before it may be left out), by its id, by chain and position as 1/3, or by chain, group and ordinal as 1/drive/2 or 1/encoder/1. Other things are named by designation or id, chains by their number, their id or their name; “chain 2” is always the number.';

/** How a command is told what was seen. */
const evidenceOptions = {
  display: { value: 'UNIT=WHAT', meaning: 'What a display shows; may be given several times.' },
  report: { value: 'CHAIN=GAP', meaning: 'Where the controller says that a chain is lost; may be given several times.' },
  onset: { value: 'WHEN', meaning: 'while-running, at-power-up or unknown.' },
  halted: { value: 'yes|no', meaning: 'Whether the control is halted by an alarm of a chain.' },
  days: { value: 'N', meaning: 'Days since the machine was last known whole (7 without it).' },
  circumstance: {
    value: 'KIND[:IDS]',
    meaning:
      'transport-or-crash, work-at-door, recent-exchange, oil-or-coolant, heat, storm or not-reworked; with names, parted by commas, it concerns only these. May be given several times.',
  },
  confirmed: {
    value: 'FOLDER|CASE',
    meaning:
      'Confirmed cases that sharpen the assumed rates, as linkwright cases counts them; the case itself is left out. May be given several times.',
  },
  strength: { value: 'N', meaning: 'With --confirmed: how many cases of its own kind each assumed rate is worth (2 without it).' },
} as const;

export const commandWords = {
  check: {
    summary: 'say what is wrong with a cabinet',
    usage: ['linkwright check FILE…'],
    about: [
      'Opens cabinet files, and the cabinets in case files, and lists everything that is wrong with them: what cannot be opened, what cannot be computed with, what is missing, and what is probably not meant.',
    ],
    options: { json },
    examples: [
      { says: 'Check one cabinet', line: 'linkwright check sample-cabinets/two-chains.cabinet.json' },
      {
        says: 'For a program',
        line: 'linkwright check --json sample-cabinets/three-units.cabinet.json sample-cabinets/two-chains.cabinet.json',
      },
    ],
  },
  compare: {
    summary: 'say what differs between two cabinets',
    usage: ['linkwright compare BEFORE AFTER'],
    about: [
      'Compares two cabinet files, or the cabinets in case files: a design with a machine, an earlier state with a later one. What is the same thing is told by its id, then by its designation, then by where it is.',
      'Lists what was added and removed, boards and units that sit elsewhere (known by their serial numbers), what moved in a chain or in the rows, plugs and leads that are connected elsewhere, and fields that say something else. “Shifted” is what stands in another slot only because something before it came or went.',
      'The exit code is 0 when there are no differences, and 1 when there are.',
    ],
    options: { json },
    examples: [
      {
        says: 'A machine as it is, and as it was documented in a case',
        line: 'linkwright compare sample-cabinets/two-chains.1.case.json sample-cabinets/two-chains.cabinet.json',
      },
      {
        says: 'For a program',
        line: 'linkwright compare --json sample-cabinets/three-units.1.case.json sample-cabinets/three-units.cabinet.json',
      },
    ],
  },
  simulate: {
    summary: 'say what every display shows when something breaks',
    usage: ['linkwright simulate FILE [--fault FAULT…]', 'linkwright simulate [FILE] --batch LINES'],
    about: [
      'Breaks what you name in a cabinet (or in the cabinet of a case) and says what every display shows, what the controller reports of each chain, and why. Where you name nothing, it is the whole machine.',
      'FAULT is item:name:mode, for example cable:-WH3:cut, plug:-WH3/upper:loose, route:-WH3:kinked, board:-TB2:down-tx, fuse:-TB2:open, place:-TB2:contact-bad, wiring:-TB2:crossed, port:1:dead, controller:all-ports-dead, lead:-WD4:open, supply:-TB10:output-lost or feedback:-WG1:short. “,loss=4.5” after a dim fibre says by how many dB; telegrams then fail only where that is more than margin and ageing reserve. “,intermittent” makes it come and go, “,intermittent,absent-now” makes it gone when the displays are read.',
      'ACT is act:name, for example unplug:-WH3/upper, reseat-plug:-WH3/lower, exchange-cables:-WH3/-WH4, exchange-boards:-TB2/-TB3 or replace-unit:-TB2.',
      aboutNames,
    ],
    options: {
      fault: { value: 'FAULT', meaning: 'Something that is broken; may be given several times.' },
      onset: { value: 'WHEN', meaning: 'while-running (the usual) or at-power-up.' },
      'not-halted': { value: '', meaning: 'The machine is not halted: there was no trip, everything is as it is now.' },
      'before-trip': { value: 'ACT', meaning: 'Done before the trip; may be given several times, in order.' },
      'since-trip': { value: 'ACT', meaning: 'Done since the trip without switching off; may be given several times, in order.' },
      chain: { value: 'CHAIN', meaning: 'Show this chain only; may be given several times.' },
      explain: { value: '', meaning: 'Follow the light hop by hop, outbound and return.' },
      light: { value: '', meaning: 'Say what would be seen at every plug and port, and with a lamp through every fibre.' },
      batch,
      json,
    },
    examples: [
      { says: 'One cable cut', line: 'linkwright simulate sample-cabinets/two-chains.cabinet.json --fault cable:-WH3:cut' },
      {
        says: 'Two faults when switching on, one of them gone again',
        line: 'linkwright simulate sample-cabinets/two-chains.cabinet.json --fault board:1/drive/2:up-rx --fault plug:-WH7/lower:loose,intermittent,absent-now --onset at-power-up',
      },
      {
        says: 'Follow the light',
        line: 'linkwright simulate sample-cabinets/two-chains.cabinet.json --fault fuse:1/2:open --explain --chain 1',
      },
      {
        says: 'Many in one run',
        line: 'linkwright simulate sample-cabinets/two-chains.cabinet.json --batch engine/cli/examples/simulate-lines.jsonl',
      },
    ],
  },
  diagnose: {
    summary: 'say what is broken, from what was seen',
    usage: ['linkwright diagnose FILE [--display …] [--report …]', 'linkwright diagnose [FILE] --batch LINES'],
    about: [
      'Works out from what was seen which parts may be broken, how likely each is, and which of them cannot be told apart. FILE is a case, which holds what was seen, or a cabinet. What is given here is added to the last snapshot of a case, and takes the place of what that says of the same display or chain.',
      'A display is unit=what: dark, quiet, upstream-loss, downstream-loss, both-losses, other, lit (cannot be read) or complains (cannot tell which way), several with commas between them, or the code that the equipment shows, if the cabinet has a legend for it.',
      'A report is chain=gap: positions as "1=2|3" or 1=2..3 (the controller is 0), ordinals as "1=drive 2|encoder 1", or 1=none when all units are reached.',
      aboutNames,
    ],
    options: {
      ...evidenceOptions,
      explain: { value: '', meaning: 'Set what was seen against what the most probable explanation predicts.' },
      top: { value: 'N', meaning: 'How many suspects to list (10 without it; all with --json).' },
      batch,
      json,
    },
    examples: [
      {
        says: 'Two neighbours complain about each other',
        line: 'linkwright diagnose sample-cabinets/two-chains.cabinet.json --display 1/2=downstream-loss --display 1/3=upstream-loss --report "1=2|3" --onset while-running --halted yes',
      },
      { says: 'A case', line: 'linkwright diagnose sample-cabinets/two-chains.1.case.json --explain' },
      {
        says: 'With the rates that finished repairs sharpened',
        line: 'linkwright diagnose sample-cabinets/two-chains.1.case.json --confirmed sample-cabinets/confirmed',
      },
      {
        says: 'Many in one run',
        line: 'linkwright diagnose sample-cabinets/two-chains.cabinet.json --batch engine/cli/examples/diagnose-lines.jsonl',
      },
    ],
  },
  next: {
    summary: 'say what to look at or to do next',
    usage: ['linkwright next FILE [--display …] [--report …]'],
    about: [
      'Works out for every look and every act what it would cost in all, down to the repaired machine, if it were done next, and lists them cheapest first: minutes of hands, changes of the machine’s state, parts, and risks, each counted in minutes. FILE is a case, or a cabinet together with what was seen; it is given as for linkwright diagnose.',
      'The figures stand in the repair table: usual ones are assumed, a cabinet file may hold its own (repair, times, spares).',
      aboutNames,
    ],
    options: {
      ...evidenceOptions,
      circumstance: { value: 'KIND[:IDS]', meaning: 'As for linkwright diagnose. May be given several times.' },
      top: { value: 'N', meaning: 'How many steps to list (6 without it; all with --json).' },
      all: { value: '', meaning: 'List also what is not worth doing, with the reason.' },
      json,
    },
    examples: [
      { says: 'What to do next in a case', line: 'linkwright next sample-cabinets/two-chains.1.case.json' },
      {
        says: 'From what was seen',
        line: 'linkwright next sample-cabinets/three-units.cabinet.json --display 1/1=downstream-loss --display 1/2=upstream-loss --onset while-running --halted yes --top 3',
      },
    ],
  },
  replay: {
    summary: 'say where the probabilities stood after each step of a case',
    usage: ['linkwright replay CASE'],
    about: [
      'Goes through a case as it is written down, step by step: what was done, what was read, look after look; and says after each step what was suspected most, and how much.',
    ],
    options: {
      top: { value: 'N', meaning: 'How many suspects to list after each step (3 without it; all with --json).' },
      json,
    },
    examples: [{ says: 'A case', line: 'linkwright replay sample-cabinets/two-chains.4.case.json' }],
  },
  cases: {
    summary: 'say what confirmed cases teach: rates, and equipment that behaves otherwise',
    usage: ['linkwright cases FOLDER|CASE… [--strength N]'],
    about: [
      'Reads cases (of a folder: every file that ends in .json) and counts finished repairs, each case once: the cause is proved, or was named by who saw it, or all but a tenth of what it may have been is mended. Sets the sharpened rates beside the assumed ones, with the interval in which each lies with 90 %, and names equipment that behaved differently than its cabinet says. What is not counted is named, with the reason; exercises and simulations never count.',
      'Rates are weighed against each other only, by how many such parts the cabinets of the cases have. Nothing is written, and nothing leaves this computer.',
    ],
    options: {
      strength: { value: 'N', meaning: 'How many confirmed cases of its own kind each assumed rate is worth (2 without it).' },
      json,
    },
    examples: [
      { says: 'A folder of cases', line: 'linkwright cases sample-cabinets/confirmed' },
      { says: 'Trust the assumed rates more', line: 'linkwright cases sample-cabinets/confirmed --strength 10' },
    ],
  },
  sums: {
    summary: 'say whether light, axes, 24 V and DC link are enough',
    usage: ['linkwright sums FILE [--set FIGURE:NAME=VALUE]…'],
    about: [
      'Works out what a cabinet must satisfy, from the figures written down in it: the light that is left on every fibre, axes on every chain against your own table, the 24 V at every unit and the load of every supply, the power of the DC link and how long it takes to fall to 60 V. What is not written down is said; nothing is guessed silently.',
      'FIGURE is length (m, of a cable or lead), couplers, measured-outbound, measured-return (dB, of a cable), cross-section (mm²), conductor-temperature (°C, of a lead), load, inrush (A), minimum-voltage (V), dc-power (kW), capacitance (µF, of a unit), or supply-voltage (V), rated-current, rated-inrush (A), rated-dc-power (kW), capacitance (µF), discharge-resistor (Ω), line-voltage (V) of a supply. The file is not changed.',
      aboutNames,
    ],
    options: {
      set: { value: 'FIGURE:NAME=VALUE', meaning: 'Try another figure; may be given several times.' },
      ambient: { value: 'N', meaning: 'Try another temperature in the cabinet, °C.' },
      reserve: { value: 'N', meaning: 'Try another ageing reserve, dB.' },
      explain: { value: '', meaning: 'Show what every number was worked out from, and where each figure comes from.' },
      json,
    },
    examples: [
      { says: 'All sums of a cabinet', line: 'linkwright sums sample-cabinets/two-chains.cabinet.json' },
      {
        says: 'What if the cabinet were hot, and one cable longer',
        line: 'linkwright sums sample-cabinets/two-chains.cabinet.json --ambient 55 --set length:-WH3=12 --explain',
      },
    ],
  },
  print: {
    summary: 'print the documents of cabinets: drawing, lists, labels, door sheet',
    usage: ['linkwright print FILE… [--what DOCUMENT]… [--into FOLDER]'],
    about: [
      'Makes the documents of each cabinet file (or of the cabinet in a case) and writes them beside it, or into a folder. Several files make one batch, for example all machines of a design.',
      'DOCUMENT is drawing, units, cables, leads, labels, door-sheet, pattern-sheet, sums or photos; without --what all but the photos are made.',
      'A PDF is vector, its text can be selected, its typefaces are embedded. SVG is one file for each page; HTML is made of what is more than labels.',
    ],
    options: {
      what: { value: 'DOCUMENT', meaning: 'What to print; may be given several times.' },
      paper: { value: 'SIZE', meaning: 'a4 (the usual), a3 or letter.' },
      labels: { value: 'SHEET', meaning: 'Label sheet: a4-63x16 (the usual), a4-48x25, a4-38x21 or letter-66x25, in mm.' },
      as: { value: 'FORM', meaning: 'pdf (the usual), svg or html.' },
      together: { value: '', meaning: 'All documents of a cabinet in one PDF, with a list of contents.' },
      design: { value: 'ID', meaning: 'Of the files, take only the machines of this design.' },
      into: { value: 'FOLDER', meaning: 'Where to write; it is made if it is not there.' },
      replace: { value: '', meaning: 'Replace files that are there already.' },
      progress: { value: '', meaning: 'Say on standard error how far it is, also where nobody looks on.' },
      json,
    },
    examples: [
      { says: 'Everything for one cabinet', line: 'linkwright print sample-cabinets/two-chains.cabinet.json --into papers' },
      {
        says: 'The sheet for the inside of the door, for two machines',
        line: 'linkwright print sample-cabinets/two-chains.cabinet.json sample-cabinets/three-units.cabinet.json --what door-sheet --into papers',
      },
    ],
  },
  isolation: {
    summary: 'say how well a cabinet tells its faults apart',
    usage: ['linkwright isolation FILE'],
    about: [
      'Works out for all single faults which share of them is seen at all, and which share is isolated to one, two or three parts: by the displays alone, with the controller’s report, and after switching off and on again. Shares are weighed with the rates of the faults, by the definitions of MIL-HDBK-2165 and IEEE Std 1522.',
      'A cable counts with its plugs as one part; what stays when a part is exchanged (a place, a route) counts as one of its own.',
    ],
    options: { json },
    examples: [{ says: 'How well a cabinet isolates', line: 'linkwright isolation sample-cabinets/two-chains.cabinet.json' }],
  },
  export: {
    summary: 'write the lists of a cabinet as CSV, or the whole as GraphML',
    usage: ['linkwright export FILE --what LIST [--to FILE]'],
    about: [
      'Writes a list to standard output, or into a file. LIST is units, cables, leads, feedbacks, sums or graph. What is written imports unchanged, but for the sums.',
      'Texts that a spreadsheet would take for a formula (designations begin with = + or −) get one apostrophe before them, which an import takes away again.',
    ],
    options: {
      what: { value: 'LIST', meaning: 'units, cables, leads, feedbacks, sums, or graph for GraphML.' },
      separator: { value: 'SIGN', meaning: 'semicolon (the usual), comma or tab.' },
      decimal: { value: 'MARK', meaning: 'point (the usual) or comma.' },
      'plain-designations': {
        value: '',
        meaning:
          'Designations as they are, without the apostrophe: for programs that print labels. A spreadsheet would show 0 for -TB1, which it takes for a cell. All else stays guarded.',
      },
      'byte-order-mark': { value: '', meaning: 'Begin with a byte order mark, by which some spreadsheets know UTF-8.' },
      to: { value: 'FILE', meaning: 'Where to write.' },
      replace: { value: '', meaning: 'Replace a file that is there already.' },
    },
    examples: [
      {
        says: 'The cables, for a spreadsheet with decimal commas',
        line: 'linkwright export sample-cabinets/two-chains.cabinet.json --what cables --decimal comma --byte-order-mark',
      },
      { says: 'As a graph', line: 'linkwright export sample-cabinets/two-chains.cabinet.json --what graph' },
    ],
  },
  import: {
    summary: 'read a list into a cabinet, and say first what it would do',
    usage: ['linkwright import FILE LIST [--what KIND] [--map COLUMN=HEAD]… [--to FILE]'],
    about: [
      'Reads a CSV file (or cells copied from a spreadsheet) or a GraphML file and says row by row what it would do to a cabinet: new, changed, as it is, doubtful. Only with --to is a new cabinet file written; the old one is never touched.',
      'A row is about the thing with its id, else with its designation. Empty cells change nothing; what is there is replaced only with --overwrite. A doubtful row is left out, with the reason. Where a list of units names chain and position, new units are hung on the ends of their chains; what hangs already stays where it is.',
      'Columns are known by the heads of an export. Others are named with --map, by these names: designation, kind, chain, position, onChain, type, model, row, slot, axes, partNumber, revision, serial, boardPartNumber, boardRevision, boardSerial, fuse, fusePartNumber, fuseRatedA, upMarking, downMarking, loadA, inrushA, minimumV, dcLinkKw, dcLinkCapacitanceUf, upper, labelUpper, lower, labelLower, lengthM, fibre, route, couplers, from, output, to, crossSectionMm2, conductorClass, unit, axis, positionKept, plugged, notes, id.',
    ],
    options: {
      what: { value: 'KIND', meaning: 'units, cables, leads, feedbacks or graph; without it what the heads look like most.' },
      map: {
        value: 'COLUMN=HEAD',
        meaning:
          'Which head of the list a column has; of equal heads the second is HEAD (2). Without a head: it is not in the list. May be given several times.',
      },
      overwrite: { value: '', meaning: 'Replace values that are there already.' },
      to: { value: 'FILE', meaning: 'Write the cabinet with the list in it to a new file.' },
      replace: { value: '', meaning: 'Replace that file if it is there already.' },
      json,
    },
    examples: [
      {
        says: 'What would a list do?',
        line: 'linkwright import sample-cabinets/two-chains.cabinet.json engine/cli/examples/serials.csv --map serial=S/N',
      },
    ],
  },
  exercise: {
    summary: 'make, check, print and count exercises in finding faults',
    usage: [
      'linkwright exercise make CABINET --fault FAULT… --passphrase WORD',
      'linkwright exercise generate CABINET --seed N --passphrase WORD',
      'linkwright exercise check FILE [--passphrase WORD]',
      'linkwright exercise sheet FILE [--answer] [--as pdf|html]',
      'linkwright exercise class RESULT… [--csv]',
      'linkwright exercise delete RESULT… --yes',
    ],
    about: [
      'make hides faults in a cabinet and writes an exercise file to standard output; it refuses, with the reason, what no allowed step can decide. generate does the same by chance from a seed. check says whether an exercise holds and what its best plan costs. sheet prints it: what is known, what may be done at which price, a table to fill in. With --answer, which needs the passphrase of its seal, it adds the answer sheet: the answer, what each step shows, the best plan and its cost. With --as both become files of their own, beside the exercise or in a folder. class makes one table of the results of many trainees. delete removes result files.',
      'What is hidden, known, sold and allowed at most is said with the options of make; steps of one’s own and spare parts are chosen in the window.',
      'The answer is sealed in the open age format with the passphrase. That keeps it from being read by accident, and from anybody without the passphrase; it does not keep it from somebody who has the passphrase or guesses a weak one. The exercises that come with the program have the passphrase “quillmere”, which is tried when none is given.',
      'FAULT is written as for simulate. The level, 1 to 4, comes from what can be measured: how many answers the start leaves open, what the best plan is expected to take, misleading displays, faults that come and go, and how many faults there are.',
      aboutNames,
    ],
    options: {
      fault: { value: 'FAULT', meaning: 'Something to be hidden; may be given twice.' },
      onset: { value: 'WHEN', meaning: 'while-running (the usual) or at-power-up.' },
      given: {
        value: 'WHAT',
        meaning:
          'Which displays everybody knows at the start: all, complaining (the usual) or none. The reports of broken chains are known too.',
      },
      known: {
        value: 'UNIT|report:CHAIN',
        meaning: 'A display or a report that everybody knows at the start, in place of --given. May be given several times.',
      },
      circumstance: { value: 'KIND[:IDS]', meaning: 'What came before, as for linkwright diagnose. May be given several times.' },
      name: { value: 'TEXT', meaning: 'What the exercise is called; else after its kind.' },
      task: { value: 'TEXT', meaning: 'What is told at the start; else the words of its kind.' },
      lesson: { value: 'TEXT', meaning: 'What is told at the end, sealed until then; else the words of its kind.' },
      times: {
        value: 'OPEN,ISOLATE,BOOT',
        meaning: 'Minutes to open the cabinet, to isolate it and to switch it on again; else those of the repair table.',
      },
      'most-minutes': { value: 'N', meaning: 'The play ends after so many minutes.' },
      'most-steps': { value: 'N', meaning: 'The play ends after so many steps.' },
      hint: { value: 'MINUTES=TEXT', meaning: 'A hint that may be bought; several are told in this order.' },
      solved: { value: 'BY', meaning: 'What must be right in the end: item, place (the usual) or mended.' },
      kind: { value: 'KIND', meaning: 'What it teaches, as counting or two-faults; any kind without it.' },
      level: { value: 'N', meaning: 'The level wanted, 1 to 4; any level without it.' },
      seed: { value: 'N', meaning: 'With generate: equal seeds and passphrases give equal exercises, but for the seal.' },
      passphrase: { value: 'WORD', meaning: 'Locks or opens the sealed answer. One that is soon guessed is refused.' },
      answer: { value: '', meaning: 'With sheet: the answer sheet as well.' },
      as: { value: 'FORM', meaning: 'With sheet: write files to print, pdf or html, instead of text.' },
      paper: { value: 'SIZE', meaning: 'a4 (the usual), a3 or letter.' },
      into: { value: 'FOLDER', meaning: 'Where the files go; else beside the exercise.' },
      replace: { value: '', meaning: 'Replace files that are there already.' },
      csv: { value: '', meaning: 'Write the table of a class as comma-separated values.' },
      yes: { value: '', meaning: 'With delete: really delete.' },
      json,
    },
    examples: [
      {
        says: 'Does an exercise hold, and what is its best plan?',
        line: 'linkwright exercise check sample-cabinets/ready-02-neighbours.exercise.json',
      },
      {
        says: 'Hide a cut cable',
        line: 'linkwright exercise make sample-cabinets/three-units.cabinet.json --fault cable:-WH2:cut --passphrase "take your time"',
      },
      {
        says: 'Decide what is known, and sell a hint',
        line: 'linkwright exercise make sample-cabinets/three-units.cabinet.json --fault cable:-WH2:cut --known -TB1 --known report:1 --hint "3=Look at both ends of the gap" --most-minutes 90 --passphrase "take your time"',
      },
      {
        says: 'Print an exercise with its answer',
        line: 'linkwright exercise sheet sample-cabinets/ready-01-counting.exercise.json --answer',
      },
      {
        says: 'The same as two PDF files',
        line: 'linkwright exercise sheet sample-cabinets/ready-01-counting.exercise.json --answer --as pdf --into prints',
      },
    ],
  },
  schema: {
    summary: 'print the JSON Schema of a kind of file',
    usage: ['linkwright schema cabinet|case|truth|exercise|result|simulate-line|diagnose-line'],
    about: [
      'Prints the JSON Schema (draft 2020-12) of cabinet, case, truth, exercise and result files, and of the lines of the two batches.',
    ],
    options: {},
    examples: [{ says: 'The schema of a cabinet file', line: 'linkwright schema cabinet' }],
  },
} as const satisfies Readonly<Record<string, CommandWords>>;

/** The commands, by the name under which they are called. */
export type CommandName = keyof typeof commandWords;

/** The head of the general help. */
export const programWords = {
  summary: 'Linkwright: what the displays of a drive cabinet show when its optical chain breaks, and what is broken when they show it.',
  usage: ['linkwright COMMAND …', 'linkwright COMMAND --help', 'linkwright --version'],
  more: 'Each command tells more with --help. Problems are written to standard error, answers to standard output.',
  help: 'Show this text.',
} as const;
