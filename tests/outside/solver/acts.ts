import type { CabinetContent, Fault, Intervention } from '../../../engine/schema/index.ts';

/**
 * What is left of the faults after an act, and where it is then: from the domain text alone (what travels with a cable or a board,
 * what stays with a place, what cures what). Acts on which the text leaves a choice open are not here.
 */
export function faultsAfter(content: CabinetContent, faults: readonly Fault[], act: Intervention): readonly Fault[] {
  switch (act.do) {
    case 'reseat-plug':
      return faults.filter((fault) => !isPlug(fault, act.link, act.end, 'loose'));
    case 'clean-plug':
      // To be cleaned a plug is pulled and plugged again.
      return faults.filter((fault) => !isPlug(fault, act.link, act.end, 'fouled') && !isPlug(fault, act.link, act.end, 'loose'));
    case 're-route':
      return faults.filter((fault) => !(fault.item === 'route' && fault.link === act.link));
    case 'replace-cable':
      return faults.filter((fault) => !((fault.item === 'cable' || fault.item === 'plug') && fault.link === act.link));
    case 'exchange-cables':
      return pluggedAgain(faults, [act.link, act.other]).map((fault) => {
        if (fault.item !== 'cable' && fault.item !== 'plug') return fault;
        return fault.link === act.link ? { ...fault, link: act.other } : fault.link === act.other ? { ...fault, link: act.link } : fault;
      });
    case 'turn-cable':
      return pluggedAgain(faults, [act.link]).map((fault): Fault => {
        if (fault.item === 'plug' && fault.link === act.link) return { ...fault, end: fault.end === 'upper' ? 'lower' : 'upper' };
        if (fault.item !== 'cable' || fault.link !== act.link) return fault;
        return { ...fault, mode: turned[fault.mode] };
      });
    case 'replace-board':
      return unplugged(content, faults, [act.unit]).filter((fault) => !(fault.item === 'board' && fault.unit === act.unit));
    case 'exchange-boards':
      return unplugged(content, faults, [act.unit, act.other]).map((fault) => {
        if (fault.item !== 'board') return fault;
        return fault.unit === act.unit ? { ...fault, unit: act.other } : fault.unit === act.other ? { ...fault, unit: act.unit } : fault;
      });
    case 'replace-fuse':
      return faults.filter((fault) => !(fault.item === 'fuse' && fault.unit === act.unit));
    case 'replace-lead':
      return faults.filter((fault) => !(fault.item === 'lead' && fault.lead === act.lead));
    case 'replace-supply':
      return faults.filter((fault) => !(fault.item === 'supply' && fault.unit === act.unit));
    case 'replace-controller-port':
      // Every exchange reseats what it unplugs: here the upper plug of the chain's first cable.
      return faults.filter((fault) => {
        const first = (content.links ?? []).find(({ upper }) => upper !== undefined && 'chain' in upper && upper.chain === act.chain);
        const isReseated = first !== undefined && isPlug(fault, first.id, 'upper', 'loose');
        return !isReseated && !(fault.item === 'controller-port' && fault.chain === act.chain);
      });
    case 'pull-feedback':
    case 'replace-feedback':
      return faults.filter((fault) => !(fault.item === 'feedback' && fault.feedback === act.feedback));
    default:
      throw new Error(`the text is not put in rules for ${act.do}`);
  }
}

const turned = {
  cut: 'cut',
  'fibres-crossed': 'fibres-crossed',
  'outbound-cut': 'return-cut',
  'return-cut': 'outbound-cut',
  'outbound-dim': 'return-dim',
  'return-dim': 'outbound-dim',
} as const;

function isPlug(fault: Fault, link: string, end: string, mode: string): boolean {
  return fault.item === 'plug' && fault.link === link && fault.end === end && fault.mode === mode;
}

/** A loose end is cured when it is plugged again. */
function pluggedAgain(faults: readonly Fault[], links: readonly string[]): readonly Fault[] {
  return faults.filter((fault) => !(fault.item === 'plug' && fault.mode === 'loose' && links.includes(fault.link)));
}

/** Both optical plugs of a unit are unplugged to exchange its board, and so reseated. */
function unplugged(content: CabinetContent, faults: readonly Fault[], units: readonly string[]): readonly Fault[] {
  const ends = (content.links ?? []).flatMap((link) => [
    ...(link.lower !== undefined && units.includes(link.lower.unit) ? [`${link.id} lower`] : []),
    ...(link.upper !== undefined && 'unit' in link.upper && units.includes(link.upper.unit) ? [`${link.id} upper`] : []),
  ]);
  return faults.filter((fault) => !(fault.item === 'plug' && fault.mode === 'loose' && ends.includes(`${fault.link} ${fault.end}`)));
}

/** Every act that `faultsAfter` knows, on every part of this cabinet. */
export function allActs(content: CabinetContent): readonly Intervention[] {
  const links = (content.links ?? []).map(({ id }) => id);
  const onChain = (content.units ?? []).filter(({ kind, onChain }) => kind !== 'supply' && onChain !== false).map(({ id }) => id);
  const fed = (content.units ?? []).filter(({ kind }) => kind !== 'supply').map(({ id }) => id);
  const pairs = <T>(list: readonly T[]) => list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b] as const));
  return [
    ...links.flatMap((link): Intervention[] => [
      { do: 'reseat-plug', link, end: 'upper' },
      { do: 'reseat-plug', link, end: 'lower' },
      { do: 'clean-plug', link, end: 'upper' },
      { do: 'clean-plug', link, end: 'lower' },
      { do: 're-route', link },
      { do: 'replace-cable', link },
      { do: 'turn-cable', link },
    ]),
    ...pairs(links).map(([link, other]): Intervention => ({ do: 'exchange-cables', link, other })),
    ...onChain.map((unit): Intervention => ({ do: 'replace-board', unit })),
    ...pairs(onChain).map(([unit, other]): Intervention => ({ do: 'exchange-boards', unit, other })),
    ...fed.map((unit): Intervention => ({ do: 'replace-fuse', unit })),
    ...(content.leads ?? []).map(({ id }): Intervention => ({ do: 'replace-lead', lead: id })),
    ...(content.units ?? []).filter(({ kind }) => kind === 'supply').map(({ id }): Intervention => ({ do: 'replace-supply', unit: id })),
    ...(content.chains ?? []).map(({ id }): Intervention => ({ do: 'replace-controller-port', chain: id })),
    ...(content.feedbacks ?? []).flatMap(({ id }): Intervention[] => [
      { do: 'pull-feedback', feedback: id },
      { do: 'replace-feedback', feedback: id },
    ]),
  ];
}
