/** Edits of a job's print places and their target bands. */
import type { Documents } from "../documents.ts";
import { type Band, bandSchema, type Job, type MixRules, type Place, placeSchema } from "../jobDocument.ts";
import { isPrintedAt } from "../lookup.ts";
import { requireId, requireValid, withChanged, withItem, withoutItem } from "./listEdit.ts";
import { usedMixes } from "./mixes.ts";

/** Four darker, give or take one and a half; hue limit of model.md §7. Invented default. */
export const DEFAULT_BAND: Band = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };

/** The mix search is free: every recipe the shelf allows, in as many mixes as pay. */
export const NO_MIX_RULES: MixRules = {
  atMostMixes: null,
  stockOnly: false,
  lowCureOnly: false,
  exactTints: false,
  keptRecipes: [],
  forbiddenRecipes: [],
};

/** A place to start from: solid, no candidates, printed on all lines. Size and cover are invented defaults. */
export function newPlace(id: string, name: string): Place {
  return {
    id,
    name,
    widthMm: 280,
    heightMm: 330,
    coverFraction: 0.5,
    halftoneFraction: 1,
    smoothed: false,
    band: DEFAULT_BAND,
    candidates: [],
    mixRules: NO_MIX_RULES,
    lineIds: null,
  };
}

function requirePlace(place: Place, job: Job): Place {
  requireValid(placeSchema, place, "place");
  for (const lineId of place.lineIds ?? []) requireId(job.lines, lineId, "line");
  return place;
}

/** Adds a place without candidates at the end. @throws RangeError where it brings candidates: they are added singly. */
export function addPlace(documents: Documents, place: Place): Documents {
  const { job } = documents;
  if (place.candidates.length > 0) {
    throw new RangeError(`a new place must have no candidates; got ${place.candidates.length}`);
  }
  return { ...documents, job: { ...job, places: withItem(job.places, requirePlace(place, job), "place") } };
}

/** Changes a place. A line that is no longer printed there loses its choice there. */
export function changePlace(
  documents: Documents,
  placeId: string,
  change: Partial<Omit<Place, "id" | "candidates">>,
): Documents {
  const { job } = documents;
  const places = withChanged(job.places, placeId, "place", (place) =>
    requirePlace({ ...place, ...change }, job),
  );
  const choices = job.choices.filter((choice) => {
    const place = places.find((one) => one.id === choice.placeId);
    return choice.placeId !== placeId || (place !== undefined && isPrintedAt(place, choice.lineId));
  });
  return { ...documents, job: { ...job, places, choices } };
}

/** Removes a place with its candidates, its choices and the mixes printed nowhere else. Its sign-offs stay. */
export function removePlace(documents: Documents, placeId: string): Documents {
  const { job } = documents;
  const places = withoutItem(job.places, placeId, "place");
  return {
    ...documents,
    job: {
      ...job,
      places,
      mixes: usedMixes({ ...job, places }),
      choices: job.choices.filter((choice) => choice.placeId !== placeId),
    },
  };
}

export function setBand(documents: Documents, placeId: string, band: Band): Documents {
  return changePlace(documents, placeId, { band: requireValid(bandSchema, band, "band") });
}

/** What the mix search of a place is to heed. */
export function setMixRules(documents: Documents, placeId: string, mixRules: MixRules): Documents {
  return changePlace(documents, placeId, { mixRules });
}
