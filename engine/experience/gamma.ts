/*
 * The gamma distribution, for intervals. Series and continued fraction of the incomplete gamma function: Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 6.5.29 and 6.5.31; log Γ by Stirling's series, 6.1.41 (from memory). No library that is kept and
 * small has the quantile.
 */

const enough = 1e-14;
const mostTerms = 10_000;

/** ln Γ(x) for x > 0: Stirling's series, after stepping up to where it is exact to 1e-15. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  for (; z < 12; z += 1) shift += Math.log(z);
  const w = 1 / (z * z);
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - shift;
}

/** Probability that a gamma variable of this shape and scale 1 is at most x. */
export function gammaProbability(shape: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(shape * Math.log(x) - x - logGamma(shape));
  return x < shape + 1 ? front * lowerSeries(shape, x) : 1 - front * upperFraction(shape, x);
}

function lowerSeries(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; n < mostTerms && term > sum * enough; n += 1) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

/** Lentz's way through the continued fraction. */
function upperFraction(shape: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - shape;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < mostTerms; n += 1) {
    const a = -n * (n - shape);
    b += 2;
    d = 1 / nonZero(a * d + b, tiny);
    c = nonZero(b + a / c, tiny);
    h *= d * c;
    if (Math.abs(d * c - 1) < enough) break;
  }
  return h;
}

const nonZero = (value: number, tiny: number) => (Math.abs(value) < tiny ? tiny : value);

/** The value below which a gamma variable of this shape and rate lies with this probability (0 < probability < 1). */
export function gammaQuantile(probability: number, shape: number, rate: number): number {
  let high = Math.max(1, shape);
  while (gammaProbability(shape, high) < probability) high *= 2;
  let low = 0;
  for (let step = 0; step < 200 && high - low > high * enough; step += 1) {
    const middle = (low + high) / 2;
    if (gammaProbability(shape, middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2 / rate;
}
