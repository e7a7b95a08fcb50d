import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { Contradiction, DiagnosisNote } from '../../engine/diagnosis/index.ts';
import {
  makeNames,
  wordAct,
  wordAnswer,
  wordBehaviourBelief,
  wordBehaviourValue,
  wordCircumstance,
  wordContradiction,
  wordDisplayTerm,
  wordFault,
  wordFaultClause,
  wordFibreCause,
  wordGap,
  wordHypothesis,
  wordItem,
  wordLook,
  wordMeanings,
  wordNote,
  wordObservation,
  wordOutcomes,
  wordReport,
  wordReportReason,
  wordTheItem,
  wordUnitCause,
} from '../../engine/messages/index.ts';
import {
  behaviourParameters,
  behaviourValues,
  circumstanceKinds,
  type DisplayMeaning,
  displayMeanings,
  type Evidence,
  type Fault,
  faultModes,
  fault as faultSchema,
  type Intervention,
  intervention,
  itemKinds,
  look as lookSchema,
  presences,
} from '../../engine/schema/index.ts';
import type { DisplayTerm, FibreCause, UnitCause } from '../../engine/simulation/index.ts';
import { rawCodesIn } from './rawCodes.ts';
import { content, ids } from './smallCabinet.ts';

const { topology } = checkCabinet(content);
const names = makeNames(topology);

function expectSentence(text: string) {
  expect(text.trim()).toBe(text);
  expect(text).not.toBe('');
  expect(text).not.toMatch(/ {2}|: *$|\.\./);
  expect(rawCodesIn(text), text).toEqual([]);
}

const reference: Readonly<Record<string, object>> = {
  cable: { link: ids.link },
  plug: { link: ids.link, end: 'upper' },
  route: { link: ids.link },
  board: { unit: ids.unit },
  fuse: { unit: ids.unit },
  place: { unit: ids.unit },
  wiring: { unit: ids.unit },
  'controller-port': { chain: ids.chain },
  controller: {},
  lead: { lead: ids.lead },
  supply: { unit: ids.supply },
  feedback: { feedback: ids.feedback },
};

const allFaults: readonly Fault[] = itemKinds.flatMap((item) =>
  faultModes[item].flatMap((mode) => presences.map((presence) => faultSchema.parse({ item, ...reference[item], mode, presence }))),
);

describe('the words for faults', () => {
  it('should cover every mode of every item, steady and intermittent', () => {
    expect(allFaults.length).toBe(2 * Object.values(faultModes).flat().length);
    for (const fault of allFaults) {
      for (const text of [wordFault(names, fault), wordFaultClause(names, fault, 'now'), wordFaultClause(names, fault, 'trip')])
        expectSentence(text);
      expect(wordFault(names, fault).startsWith(`${wordItem(names, fault)}: `)).toBe(true);
      expect(wordFault(names, fault).endsWith(', intermittent')).toBe(fault.presence === 'intermittent');
      expect(wordFaultClause(names, fault, 'now')).toMatch(/ (is|are) /);
      expect(wordFaultClause(names, fault, 'trip')).toMatch(/ (was|were) /);
    }
    expect(new Set(allFaults.map((fault) => wordFault(names, fault))).size).toBe(allFaults.length);
    const steady = allFaults.filter(({ presence }) => presence === 'steady');
    expect(new Set(steady.map((fault) => wordFaultClause(names, fault))).size).toBe(steady.length);
  });

  it('should read as a person would say it', () => {
    const word = (given: object) => wordFault(names, faultSchema.parse(given));
    expect(word({ item: 'cable', link: 'w2', mode: 'outbound-cut' })).toBe('cable -WH2: one fibre cut, outbound');
    expect(word({ item: 'plug', link: 'w2', end: 'lower', mode: 'fouled' })).toBe('lower plug of cable -WH2: fouled');
    expect(word({ item: 'board', unit: 'u1', mode: 'down-tx' })).toBe('board of -TB1: down port, transmitter dead');
    expect(word({ item: 'controller', mode: 'all-ports-dead' })).toBe('controller: all chain ports dead');
    expect(wordTheItem(names, faultSchema.parse({ item: 'plug', link: 'w2', end: 'lower', mode: 'loose' }))).toBe(
      'the lower plug of cable -WH2',
    );
    expect(wordTheItem(names, faultSchema.parse({ item: 'cable', link: 'w2', mode: 'cut' }))).toBe('cable -WH2');
  });
});

// One of each code; a code that is missing here does not compile.
const unitCauses: { readonly [C in UnitCause['code']]: Extract<UnitCause, { code: C }> } = {
  'not-powered': { code: 'not-powered', leads: [ids.lead], supplies: [ids.supply] },
  'voltage-too-low': { code: 'voltage-too-low', volts: 19.256, minimumV: 20.4 },
  'fuse-open': { code: 'fuse-open' },
  'contact-bad': { code: 'contact-bad' },
  'taken-out': { code: 'taken-out' },
  'feedback-short': { code: 'feedback-short', effect: 'code-linked' },
  'board-dead-dark': { code: 'board-dead-dark' },
  'board-dead-lit': { code: 'board-dead-lit' },
  'supply-dead': { code: 'supply-dead' },
};

const cut: Fault = { item: 'cable', link: 'w2', mode: 'cut' };
const fibreCauses: { readonly [C in FibreCause['code']]: Extract<FibreCause, { code: C }> } = {
  fault: { code: 'fault', fault: cut },
  unplugged: { code: 'unplugged', end: 'upper' },
  'sender-not-alive': { code: 'sender-not-alive', unit: ids.unit },
  'receiver-not-alive': { code: 'receiver-not-alive', unit: null },
  muted: { code: 'muted', by: ids.unit },
};

const lost = {
  code: 'lost',
  side: 'upstream',
  moment: 'now',
  scope: 'neighbour',
  link: ids.link,
  position: 2,
  causes: [fibreCauses.fault],
} as const;
const displayTerms: { readonly [C in DisplayTerm['code']]: Extract<DisplayTerm, { code: C }> } = {
  unit: { code: 'unit', cause: unitCauses['fuse-open'] },
  lost,
  'hears-both': { code: 'hears-both' },
  'end-of-chain': { code: 'end-of-chain' },
  'off-chain': { code: 'off-chain' },
  'supply-lit': { code: 'supply-lit' },
  held: { code: 'held' },
  restarted: { code: 'restarted' },
  'never-linked': { code: 'never-linked' },
  'both-shown-as': { code: 'both-shown-as', shown: 'upstream' },
};

describe('the words for reasons', () => {
  it('should cover every cause and every term', () => {
    for (const cause of Object.values(unitCauses)) expectSentence(wordUnitCause(names, cause));
    for (const cause of Object.values(fibreCauses))
      for (const tense of ['now', 'trip'] as const) expectSentence(wordFibreCause(names, cause, tense));
    for (const term of Object.values(displayTerms)) expectSentence(wordDisplayTerm(names, term));
    for (const effect of behaviourValues.shortEffect) expectSentence(wordUnitCause(names, { code: 'feedback-short', effect }));
    for (const shown of behaviourValues.whenBoth) expectSentence(wordDisplayTerm(names, { code: 'both-shown-as', shown }));
  });

  it('should say what decided, where, and when', () => {
    expect(wordDisplayTerm(names, lost)).toBe('hears nothing from above: cable -WH2 is cut');
    expect(wordDisplayTerm(names, { ...lost, side: 'downstream', moment: 'trip' })).toBe(
      'heard nothing from below at the trip: cable -WH2 was cut',
    );
    expect(wordDisplayTerm(names, { ...lost, scope: 'chain' })).toBe('has a break above it at cable -WH2: cable -WH2 is cut');
    expect(wordDisplayTerm(names, { ...lost, causes: [] })).toBe('hears nothing from above, break at cable -WH2');
    expect(wordDisplayTerm(names, { ...lost, link: null, causes: [] })).toBe('hears nothing from above');
    expect(wordUnitCause(names, unitCauses['not-powered'])).toBe('gets no 24 V: lead -WD1 is open and supply -TB9 gives none');
    expect(wordUnitCause(names, unitCauses['voltage-too-low'])).toBe(
      'gets too little voltage: 19.26 V are left of the 24 V, and it needs 20.4 V',
    );
    expect(wordUnitCause(names, { code: 'not-powered', leads: [], supplies: [] })).toBe('gets no 24 V: nothing feeds it');
    expect(wordFibreCause(names, { code: 'sender-not-alive', unit: null })).toBe('-KF1 sends nothing, because it is out of action');
  });

  it('should name the gap of a report by the units beside it, the controller included', () => {
    expect(wordGap(names, 'c1', 1)).toBe('between -KF1 and drive 1 (-TB1)');
    expect(wordReport(names, { chain: ids.chain, gap: 2, speaks: true })).toBe(
      'chain 1 is lost between drive 1 (-TB1) and encoder interface 1 (-TB2)',
    );
    expect(wordReport(names, { chain: ids.chain, gap: 'none', speaks: true })).toBe('chain 1: all units reached');
    expect(wordReport(names, { chain: ids.chain, gap: 'none', speaks: false })).toBe(
      'chain 1: the report tells nothing, because a unit is bridged',
    );
  });

  it('should say a reason once when it stops both directions', () => {
    const because = (['outbound', 'return'] as const).map((direction) => ({ link: ids.link, direction, causes: [fibreCauses.fault] }));
    expect(wordReportReason(names, { because })).toBe('Nothing passed cable -WH2 either way: cable -WH2 was cut.');
    expect(wordReportReason(names, { because: because.slice(1) })).toBe('Nothing passed cable -WH2 back: cable -WH2 was cut.');
    expect(wordReportReason(names, { because: [] })).toBe('');
  });
});

describe('the words for what was seen and done', () => {
  it('should word every act, to be done and done', () => {
    const bag = {
      link: ids.link,
      other: 'w1',
      end: 'upper',
      unit: ids.unit,
      lead: ids.lead,
      chain: ids.chain,
      feedback: ids.feedback,
      cable: 'w1',
    };
    const acts: Intervention[] = intervention.options.map((option) => {
      const shape = Object.keys(option.shape);
      const other = option.shape.do.value === 'exchange-boards' ? 'u2' : 'w1';
      const fields = Object.fromEntries(Object.entries({ ...bag, other }).filter(([key]) => shape.includes(key)));
      return intervention.parse({ do: option.shape.do.value, ...fields });
    });
    expect(acts.length).toBe(26);
    for (const act of acts) for (const form of ['toDo', 'done'] as const) expectSentence(wordAct(names, act, form));
    expect(new Set(acts.map((act) => wordAct(names, act))).size).toBe(acts.length);
    expect(wordAct(names, { do: 'exchange-boards', unit: 'u1', other: 'u2' }, 'done')).toBe('exchanged the boards of -TB1 and -TB2');
  });

  it('should word every look and all its outcomes', () => {
    const bag = { link: ids.link, end: 'upper', fibre: 'outbound', unit: ids.unit };
    for (const option of lookSchema.options) {
      const outcomes: readonly string[] = option.shape.outcomes.element.options;
      const fields = Object.fromEntries(Object.entries(bag).filter(([key]) => Object.keys(option.shape).includes(key)));
      const one = lookSchema.parse({ look: option.shape.look.value, ...fields, outcomes });
      expectSentence(wordLook(names, one));
      expectSentence(wordOutcomes(one.look, outcomes));
      expect(new Set(outcomes.map((outcome) => wordOutcomes(one.look, [outcome]))).size).toBe(outcomes.length);
    }
  });

  it('should word every set of meanings, and name the two that are answers of their own', () => {
    for (let bits = 1; bits < 2 ** displayMeanings.length; bits += 1) {
      const set: DisplayMeaning[] = displayMeanings.filter((_, index) => bits & (1 << index));
      expectSentence(wordMeanings(set));
    }
    expect(wordMeanings([])).toBe('not looked at');
    expect(wordMeanings(displayMeanings.filter((meaning) => meaning !== 'dark'))).toBe('lit, cannot read it');
    expect(wordMeanings(['quiet', 'other'])).toBe('lit, cannot read it');
    expect(wordMeanings(['both-losses', 'upstream-loss', 'downstream-loss'])).toBe('complains, cannot tell which way');
    expect(wordMeanings(['other', 'dark'])).toBe('dark or other');
  });

  it('should word every circumstance with what it concerns', () => {
    for (const kind of circumstanceKinds)
      expectSentence(wordCircumstance(names, { kind, subjects: [ids.unit, ids.link, ids.lead, ids.feedback, ids.chain] }));
    expect(wordCircumstance(names, { kind: 'work-at-door', subjects: ['u1', 'w2'] })).toBe('work at the door (-TB1 and cable -WH2)');
  });
});

describe('the words for a diagnosis', () => {
  const evidence: Evidence = {
    snapshots: [{ displays: [{ unit: 'u1', meanings: ['quiet'] }], looks: [{ look: 'voltage', unit: 'u1', outcomes: ['absent'] }] }, {}],
  };
  const steadyCut = { item: 'cable/w2', fault: { ...cut, presence: 'steady' as const } };

  it('should name every kind of observation, and its snapshot where there are several', () => {
    expect(wordObservation(names, evidence, { kind: 'display', snapshot: 0, unit: ids.unit })).toBe('display of -TB1 (look 1)');
    expect(wordObservation(names, evidence, { kind: 'report', snapshot: 1, chain: ids.chain })).toBe('report of chain 1 (look 2)');
    expect(wordObservation(names, evidence, { kind: 'look', snapshot: 0, index: 0 })).toBe('24 V at -TB1 (look 1)');
  });

  it('should say what contradicts, and what follows from each misreading', () => {
    const observation = { kind: 'display', snapshot: 0, unit: ids.unit } as const;
    const contradiction: Contradiction = {
      mispredicted: [observation],
      withoutWhich: [
        { observation, instead: [steadyCut] },
        { observation, instead: [] },
      ],
    };
    const said = wordContradiction(names, { snapshots: [{}] }, contradiction);
    expect(said).toEqual([
      'The most probable explanation does not fit everything that was seen. Against it stands: display of -TB1.',
      'Display of -TB1 misread? Then all the rest is explained by: cable -WH2: cut, both fibres.',
      'Display of -TB1 misread? Then all the rest is as if nothing were broken.',
    ]);
  });

  it('should spell out few misreadings, and none with two faults besides where one fault is enough', () => {
    const observation = { kind: 'display', snapshot: 0, unit: ids.unit } as const;
    const pair = { observation, instead: [steadyCut, steadyCut] };
    const single = { observation, instead: [steadyCut] };
    const said = (withoutWhich: Contradiction['withoutWhich']) =>
      wordContradiction(names, { snapshots: [{}] }, { mispredicted: [observation], withoutWhich });
    expect(said([pair, single, pair])).toHaveLength(2);
    expect(said([pair, pair, pair, pair, pair])).toHaveLength(4);
  });

  it('should word hypotheses, notes and beliefs', () => {
    const notes: { readonly [C in DiagnosisNote['code']]: Extract<DiagnosisNote, { code: C }> } = {
      'rates-assumed': { code: 'rates-assumed' },
      'rates-sharpened': { code: 'rates-sharpened', cases: 3 },
      'type-set-to-default': { code: 'type-set-to-default', type: ids.type },
      'presence-sampled': { code: 'presence-sampled' },
      'behaviour-narrowed': { code: 'behaviour-narrowed' },
      'feeds-not-documented': { code: 'feeds-not-documented' },
      'nothing-observed': { code: 'nothing-observed' },
    };
    for (const note of Object.values(notes)) expectSentence(wordNote(names, note));
    expect(wordHypothesis(names, [])).toBe('nothing is broken');
    expect(
      wordHypothesis(names, [steadyCut, { item: 'fuse/u1', fault: { item: 'fuse', unit: 'u1', mode: 'open', presence: 'steady' } }]),
    ).toBe('cable -WH2: cut, both fibres + control fuse of -TB1: open');
    for (const parameter of behaviourParameters) {
      for (const value of behaviourValues[parameter]) {
        expectSentence(wordBehaviourValue(parameter, value));
        expectSentence(wordBehaviourBelief(names, { type: ids.type, parameter, values: [{ value, probability: 0.25 }] }));
      }
    }
  });

  it('should answer in one line, and not point at a part when it is likelier that nothing is broken', () => {
    const diagnosis = {
      items: [{ item: { key: 'cable/w2', kind: 'cable' as const, fault: cut }, probability: 0.82, modes: [] }],
      hypotheses: [],
      groups: [],
      nothingBroken: 0,
      unvisitedShare: 0,
      contradiction: null,
      impossible: false,
      behaviours: [],
      notes: [],
      hypothesesVisited: 1,
    };
    expect(wordAnswer(names, diagnosis)).toBe('Look at cable -WH2 first: 82 % likely.');
    expect(wordAnswer(names, { ...diagnosis, items: [], impossible: true })).toBeNull();
    const whole = { ...diagnosis, nothingBroken: 0.9, items: diagnosis.items.map((item) => ({ ...item, probability: 0.08 })) };
    expect(wordAnswer(names, whole)).toBe('Most likely nothing is broken: 90 %. Otherwise look at cable -WH2 first: 8 % likely.');
  });
});
