/** Words of the page of the fault rates. */
export const rateTableWords = {
  title: 'Fault rates',
  close: 'Close',
  keywords: ['rates', 'priors', 'assumed', 'percentages'],
  intro:
    'How often each fault comes, on which all percentages stand. What nobody knows better is assumed: read the percentages as an order then. Write over a figure what your own records say; it holds for this cabinet. Emptied, it is the assumed one again.',
  caption: 'Rates by part and fault',
  heads: {
    kind: 'Part and fault',
    rate: 'In 1000 years',
    share: 'Comes and goes, in 100',
    origin: 'Where from',
    inCase: 'In this case',
  },
  perRework: 'in 1000 new or reworked cabinets, of each',
  steadyOnly: 'never',
  assumed: 'assumed',
  cabinet: 'this cabinet',
  sharpened: (factor: string, rate: string) => `${factor} by confirmed cases: ${rate}`,
  confirmed: 'Confirmed cases…',
  sourceHint: 'such as “service records, 2019 to 2026”',
  badFigure: (most: number | null) =>
    `A number ${most === null ? 'of 0 or more' : `from 0 to ${most}`} is needed, such as 1.5 or 1,5. Escape puts the old one back.`,
  field: (kind: string, head: string) => `${head}: ${kind}`,
  written: (what: string) => `fault rates: ${what}`,
} as const;
