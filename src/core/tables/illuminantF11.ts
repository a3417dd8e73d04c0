/**
 * CIE illuminant F11 (FL11, a three-band fluorescent lamp): relative spectral power, 380-780 nm in 5 nm steps.
 * Figures as published by the CIE (also in CIE 015:2018). Read by script, without retyping, from the text file
 * CIE-F11.sp of the Debian package colord-data 1.4.6, whose copyright file states GPL-2+ for the package;
 * only the published numbers are carried over, none of its text or code.
 * Every second figure (10 nm) compared with those of python3-colormath 3.0.0 (BSD-3-Clause): all equal.
 * All 81 compared by script with a further public listing, typed off by hand: all equal.
 */

/** Relative spectral power S(lambda), 1. */
// biome-ignore format: a table is read in rows.
export const POWER_F11: readonly number[] = [
  0.91, 0.63, 0.46, 0.37, 1.29, 12.68, 1.59, 1.79, 2.46, 3.33, 4.49, 33.94, 12.13, 6.95, 7.19, 7.12, 6.72,
  6.13, 5.46, 4.79, 5.66, 14.29, 14.96, 8.97, 4.72, 2.33, 1.47, 1.1, 0.89, 0.83, 1.18, 4.9, 39.59, 72.84,
  32.61, 7.52, 2.83, 1.96, 1.67, 4.43, 11.28, 14.76, 12.73, 9.74, 7.33, 9.72, 55.27, 42.58, 13.18, 13.16,
  12.26, 5.11, 2.07, 2.34, 3.58, 3.01, 2.48, 2.14, 1.54, 1.33, 1.46, 1.94, 2, 1.2, 1.35, 4.1, 5.58, 2.51,
  0.57, 0.27, 0.23, 0.21, 0.24, 0.24, 0.2, 0.24, 0.32, 0.26, 0.16, 0.12, 0.09,
];
