/**
 * From version 1 to 2: the ink room and the record book. Fields that are new get what says least: null where nothing
 * was entered, a solid unsmoothed print as version 1 knew no other, one piece, no wash. What is already there stays.
 * The defaults are written out here, since a migration must go on doing what it did.
 */
import { isDay } from "./calendarDay.ts";
import { eachWith, fieldWith, type Json, objectWith } from "./migrationSteps.ts";

/** Fields of a shop's defaults that came with the ink room; invented defaults but for what core/planning/ink says. */
const INK_ROOM: Json = {
  scales: [
    { id: "tenth-gram", name: "0.1 g scale", stepGrams: 0.1, maxGrams: null },
    { id: "gram", name: "1 g scale", stepGrams: 1, maxGrams: null },
  ],
  potSizes: [
    { id: "quart", name: "US quart", volumeCm3: 946 },
    { id: "litre", name: "1 litre", volumeCm3: 1000 },
    { id: "gallon", name: "US gallon", volumeCm3: 3785 },
    { id: "five-litres", name: "5 litres", volumeCm3: 5000 },
    { id: "five-gallons", name: "5 US gallons", volumeCm3: 18927 },
  ],
  screenWetGrams: 400,
  changeMinutes: { wipe: 3, washUp: 12, lowCureCleaning: 15, darkToLight: 3, screenSetUp: 9 },
  priorScales: null,
  columnMatchings: [],
};

function shopDefaults(defaults: Json): Json {
  const { spoilageFraction, ...rest } = defaults;
  if (spoilageFraction === undefined) return { ...INK_ROOM, ...rest };
  return { ...INK_ROOM, spoilageRule: { code: "shop", fraction: spoilageFraction }, ...rest };
}

/** Version 1 took any text for a date; what is none is kept as a note. */
function master(old: Json): Json {
  const kept: string[] = [];
  const day = (value: unknown, said: string): unknown => {
    if (typeof value !== "string" || isDay(value)) return value;
    if (value !== "") kept.push(`${said} ${value}`);
    return null;
  };
  const dated = fieldWith(
    fieldWith(old, "madeOn", (value) => day(value, "made on")),
    "expiresOn",
    (value) => day(value, "use by"),
  );
  return { gramsLeft: null, dilutionId: null, note: kept.join("; "), ...dated };
}

function setUp(old: Json): Json {
  const weighed = fieldWith(old, "weighed", (value) =>
    objectWith(value, (mean) => ({ kind: "mean", ...mean })),
  );
  return { flood: null, transferFraction: null, ...weighed };
}

const DATA_SHEET: Json = { highestCelsius: null, hazards: null, lots: [] };

function shelf(old: Json): Json {
  const bases = fieldWith(old, "bases", (list) => eachWith(list, (item) => ({ ...DATA_SHEET, ...item })));
  const colourants = fieldWith(bases, "colourants", (list) =>
    eachWith(list, (item) => ({ ...DATA_SHEET, lowCure: false, ...item })),
  );
  const masters = fieldWith(colourants, "masters", (list) => eachWith(list, master));
  const setUps = fieldWith(masters, "setUps", (list) => eachWith(list, setUp));
  return fieldWith(setUps, "defaults", (defaults) => objectWith(defaults, shopDefaults));
}

function readings(old: Json): Json {
  const counted = { pieceCount: 1, ...old };
  if (old.kind !== "lab") return counted;
  const pairs = Array.isArray(old.pairs) ? { pairCount: old.pairs.length } : {};
  return { ...pairs, sdPairDifference: null, ...counted };
}

function testPrint(old: Json): Json {
  const added: Json = {
    actualGrams: null,
    depositGsm: null,
    halftoneFraction: 1,
    smoothed: false,
    cure: { filmCelsius: null, seconds: null },
    instrument: "",
    backing: "",
    washCount: 0,
    photo: null,
  };
  return { ...added, ...fieldWith(old, "readings", (value) => objectWith(value, readings)) };
}

function library(old: Json): Json {
  const lists: Json = { goodsInChecks: [], slipAnswers: [], pots: [], dilutions: [], potEntries: [] };
  const onShelf = fieldWith(old, "shelf", (value) => objectWith(value, shelf));
  const printed = fieldWith(onShelf, "testPrints", (list) => eachWith(list, testPrint));
  const approved = fieldWith(printed, "approvals", (list) =>
    eachWith(list, (approval) => ({ modelVersion: "", said: null, ...approval })),
  );
  return { ...lists, ...approved };
}

/** An archive, or the half of one that lies in the browser's storage, from version 1 to 2. Never throws. */
export function from1To2(archive: Json): Json {
  const job = fieldWith(archive, "job", (value) =>
    objectWith(value, (old) => ({ forChildren: false, ...old })),
  );
  return fieldWith(job, "library", (value) => objectWith(value, library));
}
