// A large invented job: the demo's garments over and over, each a lot of its own with its own colour, mill and quantity.
import type { Documents } from "../../../src/job/documents.ts";
import type { GarmentLot } from "../../../src/job/garmentLotDocument.ts";
import type { Line } from "../../../src/job/jobDocument.ts";
import { seededRandom } from "../../core/prediction/seededRandom.ts";

const MILLS = 6;

function idOf(kind: number, index: number): string {
  return `00000000-0000-4000-8${kind.toString().padStart(3, "0")}-${index.toString(16).padStart(12, "0")}`;
}

/** A lot like `pattern`, its colour moved by a few units and its mill drawn; the first of a kind keeps the pattern's mill. */
function variedLot(pattern: GarmentLot, index: number, random: ReturnType<typeof seededRandom>): GarmentLot {
  const { bare } = pattern;
  const off = (sd: number) => sd * random.normal();
  const moved =
    bare.kind === "readings"
      ? {
          ...bare,
          readings: bare.readings.map(({ L, a, b }) => ({ L: L + off(1.5), a: a + off(1), b: b + off(1) })),
        }
      : bare;
  return {
    ...pattern,
    id: idOf(1, index),
    lot: `${pattern.lot}-${index}`,
    mill: `Mill ${Math.floor(random.uniform() * MILLS)}`,
    bare: moved,
  };
}

/** `lineCount` lines on the front of the demo, with two set-ups and what the demo's shelf holds; no choice is made. */
export function largeJob(demo: Documents, lineCount: number, seed: number): Documents {
  const random = seededRandom(seed);
  const { job, library } = demo;
  const lots: GarmentLot[] = [];
  const lines: Line[] = [];
  for (let i = 0; i < lineCount; i++) {
    const pattern = job.lines[i % job.lines.length]!;
    const lot = library.garmentLots.find(({ id }) => id === pattern.garmentLotId)!;
    const varied = variedLot(lot, i, random);
    lots.push(varied);
    lines.push({
      ...pattern,
      id: idOf(2, i),
      garmentLotId: varied.id,
      substitutedForLotId: null,
      sparePieceCount: null,
      // 20 to 2,000 pieces, as often below 200 as above. Invented.
      quantities: [{ size: "M", count: Math.round(20 * Math.exp(random.uniform() * Math.log(100))) }],
    });
  }
  const [front] = job.places;
  return {
    job: { ...job, lines, places: [{ ...front!, lineIds: null }], choices: [], runStartsOn: null },
    library: {
      ...library,
      garmentLots: [...library.garmentLots, ...lots],
      shelf: { ...library.shelf, setUps: library.shelf.setUps.slice(0, 2) },
    },
  };
}
