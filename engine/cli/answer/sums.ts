import { type Names, termWords, wordMissing, wordTermValue, wordWaitingTime } from '../../messages/index.ts';
import type { Loading, MissingFigure, Sums, SumTerm } from '../../sums/index.ts';

/** A term of a sum as the JSON interface gives it, with everything it was worked out from. */
export interface JsonTerm extends Omit<SumTerm, 'from'> {
  readonly label: string;
  readonly text: string;
  readonly from: readonly JsonTerm[];
}

/** One term with its words. */
function jsonTerm(term: SumTerm): JsonTerm {
  const { code, value, unit, status, bound, of, source, basis, from } = term;
  return {
    code,
    label: termWords[code],
    value,
    unit,
    status,
    bound,
    of,
    source,
    basis,
    text: wordTermValue(term),
    from: from.map(jsonTerm),
  };
}

/** Figures that are not written down, with words for each. */
function jsonMissing(names: Names, missing: readonly MissingFigure[]) {
  return missing.map((one) => ({ figure: one.figure, of: one.of, text: wordMissing(names, [one])[0] ?? '' }));
}

function loading({ load, rated, share, over }: Loading) {
  return { load: jsonTerm(load), rated: jsonTerm(rated), share, over };
}

/** All sums of a cabinet as JSON. */
export function jsonSums(names: Names, { optical, axes, feed, dcLinks, waitingTimeS, missing }: Sums) {
  return {
    optical: optical.map(({ margin, overloadMargin, loss, reserve, limits, missing: _missing, ...rest }) => ({
      ...rest,
      margin: jsonTerm(margin),
      overloadMargin: jsonTerm(overloadMargin),
      loss: jsonTerm(loss),
      reserve: jsonTerm(reserve),
      limits: limits.map(({ rule, length, limit, exceeded }) => ({ rule, length: jsonTerm(length), limit: jsonTerm(limit), exceeded })),
    })),
    axes: axes.map(({ axes: number, limit, left, wireShare, missing: _missing, ...rest }) => ({
      ...rest,
      axes: jsonTerm(number),
      limit: jsonTerm(limit),
      left: jsonTerm(left),
      wireShare: wireShare === null ? null : jsonTerm(wireShare),
    })),
    feed: {
      units: feed.units.map(({ unit, verdict, voltage, load, inrush, minimum, maximum, headroom }) => ({
        unit,
        verdict,
        voltage: jsonTerm(voltage),
        load: jsonTerm(load),
        inrush: jsonTerm(inrush),
        minimum: jsonTerm(minimum),
        maximum: jsonTerm(maximum),
        headroom: jsonTerm(headroom),
      })),
      leads: feed.leads.map(({ lead, from, to, resistance, current, drop }) => ({
        lead,
        from,
        to,
        resistance: jsonTerm(resistance),
        current: jsonTerm(current),
        drop: jsonTerm(drop),
      })),
      supplies: feed.supplies.map(({ supply, voltage, steady, inrush, outputs, backFed }) => ({
        supply,
        voltage: jsonTerm(voltage),
        steady: loading(steady),
        inrush: loading(inrush),
        outputs: outputs.map((output) => ({ output: output.output, name: output.name, ...loading(output) })),
        backFed,
      })),
      firstToFail: feed.firstToFail,
      tooMeshed: feed.tooMeshed,
    },
    dcLinks: dcLinks.map(({ supply, power, rated, share, over, capacitance, discharge }) => ({
      supply,
      power: jsonTerm(power),
      rated: jsonTerm(rated),
      share,
      over,
      capacitance: jsonTerm(capacitance),
      discharge: jsonTerm(discharge),
    })),
    waitingTime: { seconds: waitingTimeS, text: wordWaitingTime(waitingTimeS) },
    missing: jsonMissing(names, missing),
  };
}
