// Random numbers that are the same on every run: where a test needs 10^5 draws, the log's seed makes them again.

export interface SeededRandom {
  /** Even over 0..1, both ends excluded. */
  readonly uniform: () => number;
  /** Normal, mean 0 and standard deviation 1. */
  readonly normal: () => number;
  /** Student's t with 5 degrees of freedom. */
  readonly student5: () => number;
}

/** 53-bit uniforms out of two 32-bit words: L'Ecuyer's combined multiplicative generator (CACM 31, 1988; from memory). */
export function seededRandom(seed: number): SeededRandom {
  const M1 = 2147483563;
  const M2 = 2147483399;
  let s1 = (Math.abs(Math.trunc(seed)) % (M1 - 1)) + 1;
  let s2 = ((Math.abs(Math.trunc(seed)) * 7919 + 12345) % (M2 - 1)) + 1;
  const word = (): number => {
    // Both products stay below 2^53, so doubles carry them exactly.
    s1 = (40014 * s1) % M1;
    s2 = (40692 * s2) % M2;
    return (((s1 - s2) % (M1 - 1)) + (M1 - 1)) % (M1 - 1);
  };
  for (let i = 0; i < 10; i++) word();
  const uniform = (): number => (word() + (word() + 0.5) / (M1 - 1)) / (M1 - 1);
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  const student5 = (): number => {
    let squares = 0;
    for (let i = 0; i < 5; i++) squares += normal() ** 2;
    return normal() / Math.sqrt(squares / 5);
  };
  return { uniform, normal, student5 };
}
