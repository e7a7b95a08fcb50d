/*
 * How figures are written. Probabilities rest on assumed rates, so they are rounded hard, and a rounding never claims certainty.
 */

/**
 * A probability (0 to 1) as a percentage. Whole figures, one decimal below 1 % and above 99 %; "100 %" and "0 %" only when exact,
 * else ">99.9 %" and "<0.1 %".
 */
export function wordProbability(probability: number): string {
  if (!Number.isFinite(probability)) return '–';
  if (probability <= 0) return '0 %';
  if (probability >= 1) return '100 %';
  const percent = probability * 100;
  if (percent < 0.1) return '<0.1 %';
  if (percent > 99.9) return '>99.9 %';
  if (percent < 0.95) return `${percent.toFixed(1)} %`;
  // Cut, not rounded: 99.96 must not read as 100.
  if (percent > 99) return `${(Math.floor(percent * 10) / 10).toFixed(1)} %`;
  return `${Math.round(percent)} %`;
}

/** An upper bound (0 to 1) as a percentage: rounded up, so that it stays a bound. */
export function wordUpperBound(share: number): string {
  if (!Number.isFinite(share)) return '–';
  if (share <= 0) return '0 %';
  if (share >= 1) return '100 %';
  const percent = share * 100;
  if (percent < 0.1) return '<0.1 %';
  if (percent > 99.9) return '>99.9 %';
  const factor = percent < 1 || percent > 99 ? 10 : 1;
  // A bound of 3.0000001 from floating-point noise is still 3.
  return `${Math.ceil(percent * factor - 1e-9) / factor} %`;
}

/** "1 unit", "3 units": a count with its noun; `plural` where adding an s is not enough. */
export function wordCount(count: number, noun: string, plural = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : plural}`;
}

/** "a", "a and b", "a, b and c". */
export function wordList(parts: readonly string[], conjunction: 'and' | 'or' = 'and'): string {
  if (parts.length <= 1) return parts[0] ?? '';
  return `${parts.slice(0, -1).join(', ')} ${conjunction} ${parts[parts.length - 1] ?? ''}`;
}

/** The text with its first letter as a capital; a designation at the start (it begins with a sign) is left alone. */
export function startSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
