/** From confirmed pairs of a file to the readings of a test print, or to the bare colour of a lot. */
import type { ColourDocument } from "../../job/colourDocument.ts";
import type { Problem } from "../../job/problem.ts";
import type { Readings } from "../../job/recordDocument.ts";
import { viewingOf } from "./answerAsked.ts";
import { type ProposedPair, unlikeIn } from "./pairUp.ts";
import { MOST_PROBLEMS, type ReadSample } from "./readSample.ts";

type MeasuredReadings = Exclude<Readings, { readonly kind: "by-eye" }>;
export type ConfirmedPair = Pick<ProposedPair, "bare" | "print">;

type Refused = { readonly ok: false; readonly problems: readonly Problem[] };
export type PairsOutcome = { readonly ok: true; readonly readings: MeasuredReadings } | Refused;
export type ColourOutcome = { readonly ok: true; readonly colour: ColourDocument } | Refused;

const refuse = (code: string, where: string, values: Problem["values"] = {}): Refused => ({
  ok: false,
  problems: [{ code, where, values }],
});

/** All samples as spectra, or all as Lab under one light and observer, all of one geometry; what keeps them from it. */
function together(samples: readonly ReadSample[]): Problem[] {
  const [first] = samples;
  if (first === undefined) return [{ code: "readings-none", where: "" }];
  const problems: Problem[] = [];
  for (const sample of samples) {
    const { where } = sample;
    const unlike = unlikeIn(first, sample);
    const values = { name: sample.name };
    if (sample.geometry === null)
      problems.push({ code: "readings-not-answered", where, values: { ...values, what: "geometry" } });
    else if (sample.spectrum === null && viewingOf(sample) === null)
      problems.push({ code: "readings-not-answered", where, values: { ...values, what: "light" } });
    else if (unlike !== null)
      problems.push({ code: "readings-unlike", where, values: { ...values, what: unlike } });
  }
  return problems;
}

const labOf = ({ lab }: ReadSample) => lab ?? { L: Number.NaN, a: Number.NaN, b: Number.NaN };
const reflectanceOf = ({ spectrum }: ReadSample): number[] => [...(spectrum?.reflectance ?? [])];

/**
 * The readings of a test print: spectral where every sample has a spectrum, else Lab, which then every sample must
 * have under one light and observer. `pieceCount` is asked: no file says over how many garments it was read.
 */
export function readingsOfPairs(
  samples: readonly ReadSample[],
  confirmed: readonly ConfirmedPair[],
  pieceCount: number,
): PairsOutcome {
  const pairs = confirmed.flatMap((pair) => {
    const [bare, print] = [samples[pair.bare], samples[pair.print]];
    return bare === undefined || print === undefined || bare === print ? [] : [{ bare, print }];
  });
  if (pairs.length !== confirmed.length) return refuse("readings-pair-missing", "");
  const used = pairs.flatMap(({ bare, print }) => [bare, print]);
  if (new Set(used).size !== used.length) return refuse("readings-used-twice", "");
  const problems = together(used);
  const [first] = used;
  if (problems.length > 0 || first === undefined || first.geometry === null)
    return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  const { geometry } = first;
  if (used.every(({ spectrum }) => spectrum !== null)) {
    const spectra = pairs.map(({ bare, print }) => ({
      bare: reflectanceOf(bare),
      print: reflectanceOf(print),
    }));
    return { ok: true, readings: { kind: "spectral", geometry, pairs: spectra, pieceCount } };
  }
  const viewing = viewingOf(first);
  if (viewing === null || used.some(({ lab }) => lab === null))
    return refuse("readings-unlike", "", { what: "kind" });
  return {
    ok: true,
    readings: {
      kind: "lab",
      viewing,
      geometry,
      pairs: pairs.map(({ bare, print }) => ({ bare: labOf(bare), print: labOf(print) })),
      pairCount: pairs.length,
      pieceCount,
      sdPairDifference: null,
    },
  };
}

/** The bare colour of a lot from its readings: the mean spectrum where all have one, else the Lab as they were read. */
export function colourOfSamples(samples: readonly ReadSample[]): ColourOutcome {
  const problems = together(samples);
  const [first] = samples;
  if (problems.length > 0 || first === undefined || first.geometry === null)
    return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  const { geometry } = first;
  if (samples.every(({ spectrum }) => spectrum !== null)) {
    const spectra = samples.map(reflectanceOf);
    const reflectance = reflectanceOf(first).map(
      (_, band) =>
        spectra.reduce((sum, spectrum) => sum + (spectrum[band] ?? Number.NaN), 0) / spectra.length,
    );
    const assumptions = [...new Set(samples.flatMap(({ spectrum }) => spectrum?.assumptions ?? []))];
    return { ok: true, colour: { kind: "spectrum", geometry, reflectance, assumptions } };
  }
  const viewing = viewingOf(first);
  if (viewing === null || samples.some(({ lab }) => lab === null))
    return refuse("readings-unlike", "", { what: "kind" });
  return { ok: true, colour: { kind: "readings", viewing, geometry, readings: samples.map(labOf) } };
}
