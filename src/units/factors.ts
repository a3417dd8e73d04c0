/**
 * The factors of every conversion, all exact.
 *
 * Source: A. Thompson, B. N. Taylor, "Guide for the Use of the International System of Units (SI)", NIST
 * Special Publication 811, 2008 edition, Appendix B.8 (factors listed alphabetically); the values are the
 * definitions of the international yard and pound of 1959, so each is exact. Entered from memory of the
 * definitions, and checked against each other by the tests.
 */

/** inch to millimetre: 2.54 E+01, exact (SP 811 B.8, "inch (in) to millimeter"). */
export const MM_PER_INCH = 25.4;

/** inch to centimetre: 2.54 E+00, exact (SP 811 B.8, "inch (in) to centimeter"). */
export const CM_PER_INCH = 2.54;

/** square inch to square metre: 6.4516 E-04, exact (SP 811 B.8, "square inch (in2) to square meter"). */
export const SQUARE_M_PER_SQUARE_INCH = (MM_PER_INCH / 1000) ** 2;

/** gallon (US liquid) to cubic metre: 3.785 412 E-03 in SP 811 B.8; exact as 231 cubic inches. */
export const CM3_PER_US_GALLON = 231 * CM_PER_INCH ** 3;

/** yard to metre: 9.144 E-01, exact (SP 811 B.8, "yard (yd) to meter"). */
export const M_PER_YARD = 0.9144;

/** pound (avoirdupois) to kilogram: 4.535 923 7 E-01, exact (SP 811 B.8, "pound (avoirdupois) (lb)"). */
export const KG_PER_POUND = 0.45359237;

/** ounce (avoirdupois) to gram: a sixteenth of a pound, exact (SP 811 B.8 rounds it to 2.834 952 E+01). */
export const GRAMS_PER_OUNCE = (KG_PER_POUND * 1000) / 16;

/** ounce per square yard to gram per square metre: follows (SP 811 B.8 rounds it to 3.390 575 E-02 kg/m2). */
export const GSM_PER_OUNCE_PER_SQUARE_YARD = GRAMS_PER_OUNCE / (M_PER_YARD * M_PER_YARD);

/** degree Fahrenheit to degree Celsius: (t - 32)/1.8, exact (SP 811 B.8, "degree Fahrenheit"). */
export const FAHRENHEIT_PER_CELSIUS = 1.8;
export const FAHRENHEIT_AT_FREEZING = 32;
