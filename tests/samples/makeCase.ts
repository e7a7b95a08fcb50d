import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent, CaseContent, Intervention, Snapshot, TruthContent } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { Sample, SampleCase, SampleLook } from './sketch.ts';

type SeenDisplay = NonNullable<Snapshot['displays']>[number];

/** Id of a case of a sample; its files carry the same number. */
export function caseId(sample: Sample, index: number): string {
  return `${sample.content.id}-case-${index + 1}`;
}

/** The cabinet with its equipment of unknown behaviour as it really is. */
export function reallyContent(content: CabinetContent, really: SampleCase['really']): CabinetContent {
  if (really === undefined) return content;
  const types = content.types?.map((type) => ({ ...type, behaviour: { ...type.behaviour, ...really[type.id] } }));
  return { ...content, types };
}

/** What was seen: the simulated displays and reports of each look, less what was not read, with what was misread. */
export function makeCase(sample: Sample, index: number): CaseContent {
  const sampleCase = caseOf(sample, index);
  const { content } = sample;
  const { cabinet, problems } = checkCabinet(reallyContent(content, sampleCase.really));
  if (cabinet === null) throw new Error(`${sample.name} is unsound: ${JSON.stringify(problems)}`);
  const before: Intervention[] = [];
  const snapshots = sampleCase.looks.map((look): Snapshot => {
    before.push(...(look.interventions ?? []));
    const { displays, reports } = simulate({
      cabinet,
      faults: look.faults ?? sampleCase.faults,
      onset: look.onset,
      halted: look.halted,
      // In the samples whatever was done was done with the machine off.
      beforeTrip: before,
    });
    const seen = [...displays.values()]
      .filter(({ unit }) => isRead(look, unit))
      .map(({ unit, meaning }) => {
        const misread = look.misread?.[unit];
        const meanings = look.asSet?.[unit] ?? [misread ?? meaning];
        return withCode(content, { unit, meanings: [...meanings] });
      });
    const read = look.reports.map((chain) => {
      const report = [...reports.values()].find((candidate) => candidate.chain === chain);
      if (report === undefined) throw new Error(`no chain ${chain}`);
      return { chain, gaps: [report.gap] };
    });
    return {
      onset: look.onset,
      halted: look.halted,
      ...(look.restarted === true ? { restarted: true } : {}),
      ...(look.interventions === undefined ? {} : { interventions: [...look.interventions] }),
      ...(seen.length === 0 ? {} : { displays: seen }),
      ...(read.length === 0 ? {} : { reports: read }),
      ...(look.note === undefined ? {} : { note: look.note }),
    };
  });
  return {
    id: caseId(sample, index),
    name: sampleCase.name,
    ...(content.machineNumber === undefined ? {} : { machine: content.machineNumber }),
    startedAt: sampleCase.startedAt,
    ...(content.revision === undefined ? {} : { cabinetRevision: content.revision }),
    cabinet: content,
    evidence: {
      snapshots,
      ...(sampleCase.circumstances === undefined ? {} : { circumstances: [...sampleCase.circumstances] }),
    },
    ...(sampleCase.log === undefined ? {} : { log: sampleCase.log }),
    ...(sampleCase.notes === undefined ? {} : { notes: sampleCase.notes }),
  };
}

/** What was really wrong. */
export function makeTruth(sample: Sample, index: number): TruthContent {
  const { faults, story } = caseOf(sample, index);
  return { case: caseId(sample, index), faults: [...faults], story };
}

export function caseOf(sample: Sample, index: number): SampleCase {
  const sampleCase = sample.cases[index];
  if (sampleCase === undefined) throw new Error(`${sample.name} has no case ${index + 1}`);
  return sampleCase;
}

function isRead({ read }: SampleLook, unit: string): boolean {
  return 'only' in read ? read.only.includes(unit) : !read.allBut.includes(unit);
}

/** Adds the code that the equipment showed, where the unit's legend has exactly one for what was read. A dark display shows none. */
function withCode(content: CabinetContent, seen: SeenDisplay): SeenDisplay {
  const type = content.units?.find((unit) => unit.id === seen.unit)?.type;
  const legendId = content.types?.find((candidate) => candidate.id === type)?.legend;
  const codes = content.legends?.find((legend) => legend.id === legendId)?.codes ?? [];
  const fitting = codes.filter(
    ({ meanings }) => meanings.length === seen.meanings.length && meanings.every((m) => seen.meanings.includes(m)),
  );
  const [only] = fitting;
  return only === undefined || fitting.length > 1 ? seen : { ...seen, code: only.code };
}
