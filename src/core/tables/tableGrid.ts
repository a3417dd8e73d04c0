/**
 * The wavelength grid of the published tables: 380-780 nm in 5 nm steps (CIE 015:2018 gives the tables so).
 */

export const TABLE_FIRST_NM = 380;
export const TABLE_LAST_NM = 780;
export const TABLE_STEP_NM = 5;
export const TABLE_COUNT = (TABLE_LAST_NM - TABLE_FIRST_NM) / TABLE_STEP_NM + 1;
