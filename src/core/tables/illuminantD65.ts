/**
 * CIE standard illuminant D65: relative spectral power, 100 at 560 nm, 380-780 nm in 5 nm steps.
 * Figures as published by the CIE (also in CIE 015:2018). Read by script, without retyping, from the text file
 * CIE-D65.sp of the Debian package colord-data 1.4.6, whose copyright file states GPL-2+ for the package;
 * only the published numbers are carried over, none of its text or code.
 * Recomputed from the daylight components (daylightBasis.ts), M1 = -0.295, M2 = -0.689: less than 0.001 apart (tested).
 * (The D65 of python3-colormath 3.0.0, BSD-3-Clause, at 10 nm, departs by up to 0.066: another computation, not used.)
 */

/** Relative spectral power S(lambda), 1. */
// biome-ignore format: a table is read in rows.
export const POWER_D65: readonly number[] = [
  49.9755, 52.3118, 54.6482, 68.7015, 82.7549, 87.1204, 91.486, 92.4589, 93.4318, 90.057, 86.6823, 95.7736,
  104.865, 110.936, 117.008, 117.41, 117.812, 116.336, 114.861, 115.392, 115.923, 112.367, 108.811,
  109.082, 109.354, 108.578, 107.802, 106.296, 104.79, 106.239, 107.689, 106.047, 104.405, 104.225,
  104.046, 102.023, 100, 98.1671, 96.3342, 96.0611, 95.788, 92.2368, 88.6856, 89.3459, 90.0062, 89.8026,
  89.5991, 88.6489, 87.6987, 85.4936, 83.2886, 83.4939, 83.6992, 81.863, 80.0268, 80.1207, 80.2146,
  81.2462, 82.2778, 80.281, 78.2842, 74.0027, 69.7213, 70.6652, 71.6091, 72.979, 74.349, 67.9765, 61.604,
  65.7448, 69.8856, 72.4863, 75.087, 69.3398, 63.5927, 55.0054, 46.4182, 56.6118, 66.8054, 65.0941,
  63.3828,
];
