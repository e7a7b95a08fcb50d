import { checkCabinet } from '../../cabinet/index.ts';
import type { ConfirmedCase, Estimate, Experience } from '../../experience/index.ts';
import { experienceWords, makeNames, wordCauseKind, wordClue, wordDifference, wordNotCounted } from '../../messages/index.ts';
import type { CaseContent } from '../../schema/index.ts';

type Files = ReadonlyMap<CaseContent, string>;

/** What cases teach, as the JSON interface gives it. */
export function jsonCases(
  { strength, confirmed, uncounted, rates, clues }: Experience,
  fileOf: Files,
  others: readonly { readonly file: string; readonly kind: string }[],
) {
  const nameCase = (content: CaseContent) => ({
    file: fileOf.get(content) ?? null,
    case: content.id,
    name: content.name,
    machine: content.machine ?? content.cabinet.machineNumber ?? null,
    handedBackAt: content.result?.at ?? null,
  });
  return {
    strength,
    confirmed: confirmed.map((one) => ({
      ...nameCase(one.content),
      causes: one.causes.map(({ item, mode, share }) => ({ item, mode, share, label: wordCauseKind({ item, mode }) })),
      differences: jsonDifferences(one),
    })),
    uncounted: [
      ...uncounted.map(({ content, reason }) => ({ ...nameCase(content), why: reason.why, reason: wordNotCounted(reason) })),
      ...others.map(({ file, kind }) => ({
        file,
        case: null,
        name: null,
        machine: null,
        handedBackAt: null,
        why: 'other-kind',
        reason: experienceWords.otherFile(kind),
      })),
    ],
    rates: rates.map(({ item, mode, assumed, sharpened, factor, cases, expected }) => ({
      item,
      mode,
      label: wordCauseKind({ item, mode }),
      assumed: jsonEstimate(assumed),
      sharpened: jsonEstimate(sharpened),
      factor,
      confirmed: cases,
      expected,
    })),
    behaved: clues.map((clue) => ({
      kind: clue.equipment.kind,
      model: clue.equipment.model,
      revision: clue.equipment.revision,
      parameter: clue.parameter,
      assumed: clue.assumed,
      instead: clue.instead,
      cases: clue.cases.map(({ id }) => id),
      text: wordClue(clue),
    })),
  };
}

const jsonEstimate = ({ value, low, high }: Estimate) => ({ perYear: value, low, high });

function jsonDifferences({ content, differences }: ConfirmedCase) {
  const names = makeNames(checkCabinet(content.cabinet).topology);
  return differences.map((difference) => ({
    kind: difference.observation.kind,
    snapshot: difference.observation.snapshot,
    subject:
      difference.observation.kind === 'display'
        ? difference.observation.unit
        : difference.observation.kind === 'report'
          ? difference.observation.chain
          : difference.observation.index,
    seen: difference.seen,
    predicted: difference.predicted,
    text: wordDifference(names, content.evidence, difference),
  }));
}
