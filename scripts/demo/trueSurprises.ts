/**
 * What the demo's cloth really does, in ln of the wet-out gain; the job never holds these numbers. A real shop
 * cannot know them: they are what its test prints are for. From the table "The demo job" of the product.
 */
export const TRUE_LN_SURPRISE: Readonly<Record<string, number>> = {
  G01: 0,
  G02: 0.1,
  G03: -0.1,
  G04: 0.82,
  G05: -0.15,
  G06: 0,
  G07: 0.25,
  G08: -0.2,
  G09: 0.3,
  G10: 0.3,
  G11: 0.3,
  G12: -0.6,
};
