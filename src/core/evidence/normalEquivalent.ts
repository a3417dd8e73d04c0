/** How surprising a squared distance is, said in standard deviations of a single normal. */
import { normalCumulative } from "../prediction/normalDistribution.ts";

/** ln P(|Z| > z) of a standard normal, also where the probability itself is too small for a number. */
function lnTwoSided(z: number): number {
  if (z < 3) return Math.log(2 * (1 - normalCumulative(z)));
  let fraction = z;
  for (let k = 60; k >= 1; k--) fraction = z + k / fraction;
  return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI) + Math.log(2 / fraction);
}

/**
 * ln P(chi^2 > d2) for 1, 2, 3, ... degrees of freedom: the tail of nu - 2 and one more term,
 * Q(nu) = Q(nu - 2) + (d2/2)^(nu/2 - 1) exp(-d2/2) / Gamma(nu/2) (Abramowitz & Stegun 1964, 26.4.8).
 */
function lnChiSquareTail(d2: number, degrees: number): number {
  const half = d2 / 2;
  let tail = degrees % 2 === 1 ? lnTwoSided(Math.sqrt(d2)) : -half;
  let lnGamma = degrees % 2 === 1 ? 0.5 * Math.log(Math.PI) : 0;
  for (let nu = degrees % 2 === 1 ? 3 : 4; nu <= degrees; nu += 2) {
    // Gamma(nu/2) = (nu/2 - 1) Gamma(nu/2 - 1).
    lnGamma += Math.log(nu / 2 - 1);
    const term = (nu / 2 - 1) * Math.log(half) - half - lnGamma;
    const larger = Math.max(tail, term);
    tail = larger + Math.log(Math.exp(tail - larger) + Math.exp(term - larger));
  }
  return tail;
}

/**
 * The z whose two-sided normal tail is as likely as a squared Mahalanobis distance of `d2` or more in `degrees`
 * dimensions: 3 stands for 1 in 370 whatever the number of readings.
 * @throws RangeError for a negative distance or degrees under 1.
 */
export function normalEquivalent(d2: number, degrees: number): number {
  if (!(d2 >= 0)) throw new RangeError(`squared distance must be >= 0; got ${d2}`);
  if (!(degrees >= 1)) throw new RangeError(`degrees must be >= 1; got ${degrees}`);
  if (degrees === 1 || d2 === 0) return Math.sqrt(d2);
  const wanted = lnChiSquareTail(d2, degrees);
  let low = 0;
  let high = Math.sqrt(d2);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (lnTwoSided(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
