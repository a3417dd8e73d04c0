/**
 * From version 2 to 3: the press, the mix proposal and the test plan. Fields that are new get what says least: null where
 * nobody has said, no rule, an empty log; inks stand in the shop, and the shop owes a spoiled piece in full. What is
 * already there stays. The defaults are written out here, since a migration must go on doing what it did.
 */
import { eachWith, fieldWith, type Json, objectWith } from "./migrationSteps.ts";

const MIX_RULES: Json = {
  atMostMixes: null,
  stockOnly: false,
  lowCureOnly: false,
  exactTints: false,
  keptRecipes: [],
  forbiddenRecipes: [],
};

/** Invented defaults. */
const TESTING: Json = { perDay: null, restDays: 1, pieceCount: 2, pairCount: 4 };

/** The object with what it lacks of `added`, in every object of the list at `field`. */
function eachGiven(object: Json, field: string, added: Json): Json {
  return fieldWith(object, field, (list) => eachWith(list, (item) => ({ ...added, ...item })));
}

function shopDefaults(old: Json): Json {
  const priced = fieldWith(old, "prices", (value) =>
    objectWith(value, (prices) => ({ pressHour: 0, ...prices })),
  );
  return { liableFraction: 1, testing: TESTING, ...priced };
}

function shelf(old: Json): Json {
  const inks = eachGiven(eachGiven(old, "bases", { inStock: true }), "colourants", { inStock: true });
  return fieldWith(inks, "defaults", (defaults) => objectWith(defaults, shopDefaults));
}

function job(old: Json): Json {
  const lines = eachGiven(old, "lines", { sparePieceCount: null });
  const places = eachGiven(lines, "places", { mixRules: MIX_RULES });
  const checklist = eachGiven(places, "checklist", { said: null });
  return { runStartsOn: null, pressLog: [], ...checklist };
}

/** An archive, or the half of one that lies in the browser's storage, from version 2 to 3. Never throws. */
export function from2To3(archive: Json): Json {
  const withJob = fieldWith(archive, "job", (value) => objectWith(value, job));
  return fieldWith(withJob, "library", (value) =>
    objectWith(value, (library) => fieldWith(library, "shelf", (old) => objectWith(old, shelf))),
  );
}
