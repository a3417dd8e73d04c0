/** `npm run bench`: how fast predictions are, as ratios to a yardstick measured in the same run on the same machine. */
import { cpus } from "node:os";
import * as spectral from "spectral.js";
import { Bench } from "tinybench";
import { deltaE00 } from "../../src/core/colorimetry/ciede2000.ts";
import { reflectanceFromLab } from "../../src/core/colorimetry/reconstruct.ts";
import { printableInk } from "../../src/core/prediction/printableInk.ts";
import { workspaceFor } from "../../src/core/prediction/printedColour.ts";
import { printedLab } from "../../src/core/prediction/printedLab.ts";
import { spreadOf } from "../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../src/core/prediction/wettableGarment.ts";
import { predictPackedMatrix } from "../../src/engine/matrixPrediction.ts";
import { GARMENTS, VIEWING } from "../core/prediction/cloths.ts";
import { base, black, mixOf, navy, STROKE, tinted } from "../core/prediction/inks.ts";
import { benchDecisions } from "./decisionsBench.ts";
import { benchEvidence } from "./evidenceBench.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };

/** Eight typical columns, half of them tinted. */
const MIXES = [
  mixOf(base("gloss")),
  mixOf(base("curable")),
  mixOf(base("matt")),
  mixOf(base("stretch")),
  tinted("curable", black, 0.001),
  tinted("curable", black, 0.0025),
  tinted("curable", black, 0.005),
  tinted("curable", navy, 0.01),
];

/** The least that the issue asks for, as predictions per yardstick mix. */
const WANTED = { withDifference: 2, without: 4, withSpread: 1 / 5, matrixMs: 3 };

export async function run(): Promise<void> {
  const clothes = Object.values(GARMENTS).map((garment) => wettableGarment(garment, VIEWING));
  const rooms = clothes.map(workspaceFor);
  const inks = MIXES.map((mix) => printableInk(mix, STROKE));
  const cells = clothes.flatMap((cloth, r) => inks.map((ink) => ({ cloth, ink, room: rooms[r]! })));
  const one = new spectral.Color("#7a1f2b");
  const other = new spectral.Color("#2e5339");
  let sink = 0;

  const bench = new Bench({ time: 1500, warmupTime: 500 });
  bench
    .add("yardstick", () => {
      for (let i = 0; i < cells.length; i++) sink += spectral.mix([one, 0.5], [other, 0.5]).sRGB[0]!;
    })
    .add("without", () => {
      for (const { cloth, ink, room } of cells) sink += printedLab(room, cloth, ink.film).L - cloth.bareLab.L;
    })
    .add("withDifference", () => {
      for (const { cloth, ink, room } of cells) {
        const lab = printedLab(room, cloth, ink.film);
        sink += deltaE00(cloth.bareLab, lab) + lab.L - cloth.bareLab.L;
      }
    })
    .add("withSpread", () => {
      for (const { cloth, ink, room } of cells) sink += spreadOf(room, cloth, ink, BAND).chanceInBand;
    })
    .add("matrixWithScreen", () => {
      const request = {
        rows: Object.entries(GARMENTS).map(([lineId, garment]) => ({ lineId, garment })),
        columns: MIXES.map((mix, i) => ({ candidateId: `${i}`, mix, application: STROKE })),
        viewing: VIEWING,
        band: BAND,
      };
      sink += predictPackedMatrix(request)[4]!;
    })
    .add("reconstruction", () => {
      sink += reflectanceFromLab({ L: 42, a: -2, b: -18 }, VIEWING).ok ? 1 : 0;
    });
  await bench.run();
  if (!Number.isFinite(sink)) throw new RangeError("a prediction was not a number");

  /** Median microseconds for all the cells once. */
  const medianUs = (name: string): number => {
    const result = bench.tasks.find((task) => task.name === name)?.result;
    if (result === undefined || !("latency" in result)) throw new RangeError(`${name} was not measured`);
    return result.latency.p50 * 1000;
  };
  const yardstick = medianUs("yardstick");
  const say = (text: string): void => console.log(text);
  const ratio = (name: "withDifference" | "without" | "withSpread", words: string): void => {
    const measured = yardstick / medianUs(name);
    const met = measured >= WANTED[name] ? "met" : "NOT met";
    say(`${words}: ${measured.toFixed(2)} x the yardstick's rate, wanted ${WANTED[name]} x: ${met}`);
  };
  say(`${cpus().length} x ${cpus()[0]?.model ?? "?"}, Node ${process.version}, ${new Date().toISOString()}`);
  say(`yardstick, mix of two prebuilt colours to sRGB: ${(yardstick / cells.length).toFixed(2)} us`);
  ratio("withDifference", "predictions with CIEDE2000");
  ratio("without", "predictions without it");
  ratio("withSpread", "predictions with full spread");
  const matrixMs = medianUs("withSpread") / 1000;
  const matrixMet = matrixMs < WANTED.matrixMs ? "met" : "NOT met";
  say(
    `12 x 8 matrix, spread recomputed: ${matrixMs.toFixed(2)} ms, wanted under ${WANTED.matrixMs} ms: ${matrixMet}`,
  );
  say(
    `the same from the raw request, with screen colours: ${(medianUs("matrixWithScreen") / 1000).toFixed(2)} ms`,
  );
  say(`spectrum reconstructed from a colour: ${medianUs("reconstruction").toFixed(0)} us`);
  benchEvidence(say);
  await benchDecisions(say);
}
