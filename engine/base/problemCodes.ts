/**
 * Every problem code of the engine, with the names of the facts that come with it. The message catalogue (`engine/messages`) must
 * word each of them: a code without words, and words that use a fact which is not listed here, do not compile.
 *
 * Facts named `…s` that list names hold at most ten of them, joined by commas; the fact `count` then tells how many there are.
 */
export const problemFacts = {
  // The file as a whole.
  'file-empty': [],
  'file-too-large': ['megabytes', 'limitMegabytes'],
  'file-not-utf8': ['line'],
  'json-damaged': ['line', 'column', 'found', 'expected'],
  'json-too-deep': ['line', 'column', 'limit'],
  'json-too-many-values': ['limit'],
  'json-duplicate-key': ['key', 'line', 'column'],
  'json-prototype-key': ['key', 'line', 'column'],
  'envelope-not-object': ['expected'],
  'envelope-field-unknown': ['field'],
  'envelope-app-version-invalid': [],
  'format-foreign': ['format', 'expected'],
  'format-other-kind': ['format', 'expected'],
  'version-missing': [],
  'version-invalid': ['version'],
  'version-too-new': ['version', 'supported', 'appVersion'],
  'migration-failed': ['from', 'to'],
  'content-missing': [],
  // The shape of the content; `line` is the line of the file.
  'field-unknown': ['field', 'line'],
  'field-missing': ['field', 'line'],
  'field-wrong-type': ['field', 'expected', 'found', 'line'],
  'field-not-allowed': ['field', 'allowed', 'line'],
  'text-too-long': ['field', 'maximum', 'line'],
  'text-too-short': ['field', 'minimum', 'line'],
  'list-too-long': ['field', 'maximum', 'line'],
  'list-too-short': ['field', 'minimum', 'line'],
  'field-too-large': ['field', 'maximum', 'line'],
  'field-too-small': ['field', 'minimum', 'line'],
  'field-bad-form': ['field', 'form', 'line'],
  'field-invalid': ['field', 'line'],
  'more-problems': ['count'],
  'problems-too-many': [],
  'id-duplicate': ['id', 'first', 'second'],
  // How the cabinet hangs together.
  'reference-unknown': ['thing', 'field', 'id'],
  'link-end-open': ['link', 'end'],
  'chain-fork': ['chain', 'links', 'count'],
  'unit-fork': ['unit', 'links', 'count'],
  'unit-merge': ['unit', 'links', 'count'],
  'chain-loop': ['units', 'count'],
  'chain-number-doubled': ['number', 'chains', 'count'],
  'chain-empty': ['chain'],
  'unit-orphan': ['unit', 'units', 'count'],
  'unit-off-chain-linked': ['unit', 'link'],
  'supply-on-chain': ['unit', 'link'],
  'supply-marked-on-chain': ['unit'],
  'encoder-interface-off-chain': ['unit'],
  'unit-not-fed': ['unit'],
  'feed-without-supply': ['unit', 'from'],
  'feed-loop-without-supply': ['units', 'count'],
  'feed-loop': ['units', 'count'],
  'lead-into-supply': ['lead', 'unit'],
  'lead-end-open': ['lead', 'end'],
  'feedback-on-supply': ['feedback', 'unit'],
  // Whether it is sound.
  'cabinet-empty': [],
  'controller-missing': [],
  'designation-missing': ['thing', 'id'],
  'designation-doubled': ['designation', 'ids', 'count'],
  'place-doubled': ['row', 'slot', 'units', 'count'],
  'row-doubled': ['row'],
  'axis-limit-exceeded': ['chain', 'axes', 'limit', 'cycleClass', 'assumedDrives'],
  'axis-limit-missing': ['chain', 'cycleClass'],
  'axis-limit-doubled': ['cycleClass'],
  'axes-on-supply': ['unit'],
  'supply-ratings-on-unit': ['unit'],
  'feedback-axis-unknown': ['feedback', 'unit', 'axis'],
  'legend-code-doubled': ['legend', 'code'],
  'unknown-behaviours-too-many': ['types', 'count', 'limit'],
  'spare-unequal': ['spare', 'partNumber', 'kind'],
  'rate-mode-unknown': ['item', 'mode'],
  'rate-doubled': ['item', 'mode'],
  'figures-crossed': ['thing', 'quantity', 'low', 'high'],
  // The desktop program: `reason` is a short code, the system's (`ENOENT`) or `elsewhere`, `malformed`, `failed`.
  'file-unreadable': ['file', 'reason'],
  'file-not-saved': ['file', 'reason'],
  'call-refused': ['call', 'reason'],
  'settings-set-aside': ['file'],
  'settings-not-kept': ['reason'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** The code of a problem. */
export type ProblemCode = keyof typeof problemFacts;
/** The facts that come with a problem of code `C`. */
export type ProblemFacts<C extends ProblemCode> = { readonly [F in (typeof problemFacts)[C][number]]: string | number };
/** Every problem code. */
export const problemCodes = Object.keys(problemFacts) as readonly ProblemCode[]; // the keys are exactly the codes
