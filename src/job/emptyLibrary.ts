/**
 * The library of a shop that has entered nothing: empty lists, and defaults that have to be something.
 * Every figure here is an invented default that the shop replaces on its shelf; prices start at nothing.
 */
import type { Library } from "./libraryDocument.ts";

export function emptyLibrary(): Library {
  return {
    shelf: {
      bases: [],
      colourants: [],
      masters: [],
      meshes: [],
      squeegees: [],
      setUps: [],
      defaults: {
        shopName: "",
        currency: "",
        units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
        // D65/10 degrees and 45:0 are usual on textile instruments (common practice, no source).
        instrument: { viewing: { illuminant: "D65", observer: "10deg" }, geometry: "45:0" },
        tintLadder: [0, 0.001, 0.0025, 0.005, 0.01],
        testAboveCount: 144,
        prices: { print: 0, polyesterSurcharge: 0, screen: 0, inkChange: 0, testPrint: 0 },
        spoilageFraction: 0.02,
        refusedFraction: 0.7,
      },
    },
    garmentLots: [],
    testPrints: [],
    approvals: [],
  };
}
