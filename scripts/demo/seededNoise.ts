/** Reading noise of the demo: the same seed gives the same readings on every run. */

/** A stream of normal deviates, mean 0 and sd 1. */
export type NoiseStream = () => number;

/** Uniform 32-bit generator: a Weyl sequence through a multiply-and-shift mixer; good enough for noise. */
function uniformStream(seed: number): () => number {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let bits = Math.imul(counter ^ (counter >>> 16), 0x85ebca6b);
    bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
    // In (0, 1): the logarithm below needs more than 0.
    return (((bits ^ (bits >>> 16)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Normal deviates by the polar form of Box & Muller (1958), one of each pair. */
export function noiseStream(seed: number): NoiseStream {
  const uniform = uniformStream(seed);
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
