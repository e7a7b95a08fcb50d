/** What the help is about, in the order in which it is listed. */
export const helpTopics = ['technician', 'builder', 'instructor', 'displays', 'cautions', 'keys', 'glossary', 'about'] as const;
export type HelpTopic = (typeof helpTopics)[number];

/** Keys that are named in the help, as this computer writes them. */
export interface HelpKeys {
  readonly newCabinet: string;
  readonly walk: string;
  readonly report: string;
  readonly next: string;
  readonly simulate: string;
  readonly handBack: string;
  readonly draw: string;
  readonly practice: string;
  readonly sums: string;
  readonly documents: string;
  readonly projector: string;
}

/** Something to do, or to know: a head and what belongs to it. */
interface HelpItem {
  readonly head: string;
  readonly text: string;
}

export const helpWords = {
  title: 'Help',
  close: 'Close',
  topics: 'Topics',
  search: 'Search the help',
  found: (count: number) => (count === 0 ? 'Nothing found. Try one word, as it stands on the screen.' : `${count} found`),
  topic: {
    technician: 'At a halted machine',
    builder: 'Document a cabinet',
    instructor: 'Teach with exercises',
    displays: 'What a display can say',
    cautions: 'Cautions',
    keys: 'Keys',
    glossary: 'Words',
    about: 'About, licence, sources',
  },
  intro: {
    technician: 'The first minute before a machine that has stopped, with or without a file of its cabinet.',
    builder: 'The first minute of a new cabinet, down to the sheet for the inside of its door.',
    instructor: 'The first minute of a lesson: an exercise is played, and then one of your own is made.',
    displays: 'Whatever code the equipment has: it means one of these. A legend, filled in from the equipment’s manual, says which.',
    cautions: 'They stand where they concern, at steps and changes of state. Here are all that the program knows.',
    keys: 'Letters without Ctrl or Alt are heard where nothing is being typed.',
    glossary: 'One word for one thing, on the screen and on paper.',
    about: 'What the program is, and what it stands on.',
  },
  steps: {
    technician: (keys: HelpKeys): readonly HelpItem[] => [
      {
        head: 'Do not switch off yet',
        text: 'Note or photograph every display and the controller’s report first: switching off erases them.',
      },
      {
        head: 'Open the cabinet, or write its chain',
        text: `File > Open a cabinet or a case. Without a file: File > New cabinet (${keys.newCabinet}), and one line such as “7 servo, spindle” in the order of the chain.`,
      },
      {
        head: 'Enter what you see',
        text: `Click a display, or press ${keys.walk} in Find and walk along the chain: 1 to 6 for what it shows, 0 for not looked at. “Lit, cannot read it” is an answer too.`,
      },
      {
        head: 'Enter the report',
        text: `Click the gap that the controller names, or press ${keys.report}. Say beside the picture whether it stopped while running or would not come up, and whether the control is halted.`,
      },
      {
        head: 'Do the next step',
        text: `The black button names it, with minutes and risk (${keys.next} goes there). Press what came out of it; the next step follows. Everything entered stands in the log, where it can be corrected.`,
      },
      {
        head: 'Hand back',
        text: `When it runs, ${keys.handBack}: what was proved, what must be put back, parts and serial numbers, and a report to print.`,
      },
      {
        head: 'When you doubt an answer',
        text: `Choose a suspect: what it would show is laid under what was seen. Or simulate any fault (${keys.simulate}) and look at every display.`,
      },
    ],
    builder: (keys: HelpKeys): readonly HelpItem[] => [
      {
        head: 'Begin',
        text: `File > New cabinet (${keys.newCabinet}): one line builds the chains. Or go to Draw (${keys.draw}) and drag units from the shelf, onto the drawing or onto a cable.`,
      },
      {
        head: 'From a spreadsheet',
        text: 'Paste rows in Draw, or File > Import a list. Each row says what becomes of it before anything is taken.',
      },
      {
        head: 'Fill in',
        text: 'Choose a thing: its fields stand at the right. The list view shows the same data as tables. Nothing has to be complete; what is not written down is assumed, and named.',
      },
      {
        head: 'Is it in order?',
        text: `Problems are listed as you draw, each with a jump, and a fix where there is one. Light, axes, 24 V and DC link are added up on the page of sums (${keys.sums}).`,
      },
      {
        head: 'How does your equipment answer?',
        text: 'Cabinet > Types of equipment: fill in the legend from the manual. A staged break (one plug pulled on a healthy machine) settles how a type answers to a loss.',
      },
      {
        head: 'Print',
        text: `File > Documents (${keys.documents}): drawing, lists, labels, a pattern sheet to fill in by pencil, and the door sheet: what every display shows for every single fault.`,
      },
      {
        head: 'One design, many machines',
        text: 'Cabinet > New machine from this design clears the serial numbers and keeps the rest. Each machine can be compared with its design.',
      },
    ],
    instructor: (keys: HelpKeys): readonly HelpItem[] => [
      {
        head: 'Play one yourself',
        text: `Practice (${keys.practice}), and start a ready exercise: say whom you suspect and what you expect, take a step at its price, then name what is wrong. The look back sets each step beside the best plan.`,
      },
      {
        head: 'Make one',
        text: 'Practice > Make an exercise: hide a fault, decide what is known and what may be done. What no allowed step can decide is refused, with the reason.',
      },
      {
        head: 'Seal it',
        text: 'A passphrase seals the answer in the file. Who is to play on a computer of his own needs it, and could open the answer with it: it keeps out chance looks, not cheats. Once saved, the form closes; the passphrase opens it again.',
      },
      {
        head: 'Generate a set',
        text: 'Practice > Generate exercises draws them by chance at a wanted difficulty. The seed draws the same set again, with its answers: keep it to yourself.',
      },
      {
        head: 'Before a class',
        text: `${keys.projector} shows large type. Print gives the exercise for paper, and apart from it the answer sheet.`,
      },
      {
        head: 'After it',
        text: 'Trainees save results under a free code, never a name. Practice > Table of a class takes a folder of them, names each file that is damaged or counted already, and writes CSV.',
      },
    ],
  },
  defer: 'The machine’s manual, local codes and licensed persons come first, before anything that stands here.',
  about: [
    {
      head: 'Where figures come from',
      text: 'Rates of faults are assumed until you give your own or confirmed cases sharpen them; minutes are estimates. Every figure says so where it stands: in the repair table, in the sums, in “Why”.',
    },
    {
      head: 'What the answers stand on',
      text: 'Bayes’ rule over every single fault and every pair; next steps by their expected cost to the repaired machine (decision-theoretic troubleshooting: Heckerman, Breese and Rommelse 1995); the best plan of an exercise by dynamic programming (Bellman 1957).',
    },
    {
      head: 'Standards',
      text: 'Designations as in IEC 81346, colours with the meanings of IEC 60073, lists as CSV (RFC 4180) and GraphML, sealed answers in the age format (age-encryption.org/v1).',
    },
    {
      head: 'Type',
      text: 'B612, under the SIL Open Font Licence. The libraries that the program is built with are free software; package.json in its folder names them.',
    },
    {
      head: 'More to read',
      text: 'README.md and engine/DOMAIN.md in the folder of the program: what the command line can do, and what simulation and diagnosis mean, rule by rule.',
    },
  ],
} as const;
