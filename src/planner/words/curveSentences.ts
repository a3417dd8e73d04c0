/** What the test prints did to a garment's prediction, in words: before, now, and what was read. */
import type { EvidenceLevel, PredictionReason } from "../../core/prediction/prediction.ts";
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { LotReading } from "../../job/recordBook/lotReadings.ts";
import { percentWords } from "./garmentWords.ts";
import { listed } from "./listed.ts";
import { changeWords, rangeWords } from "./predictionSentences.ts";

const said = (point: TintCurvePoint) => `${changeWords(point.deltaL)}, ${rangeWords(point)} in nine of ten`;

/** "Without tint: before any print 3.4 darker, 1.1 to 9.9 in nine of ten; now 3.1 darker, 2.3 to 4.1. Read: 3.1 darker at 0 %." */
export function curveSentence(
  curve: readonly TintCurvePoint[],
  prior: readonly TintCurvePoint[],
  points: readonly LotReading[],
): string {
  const [now] = curve;
  if (now === undefined) return "";
  const [before] = prior;
  const at = now.massFraction === 0 ? "Without tint" : `At ${percentWords(now.massFraction)}`;
  const then =
    before === undefined
      ? `${at}: ${said(now)}.`
      : `${at}: before any print ${said(before)}; now ${said(now)}.`;
  if (points.length === 0) return `${then} Nothing was read on this lot with this base and set-up.`;
  const read = points.map(
    ({ deltaL, massFraction }) => `${changeWords(deltaL)} at ${percentWords(massFraction)}`,
  );
  return `${then} Read: ${read.join(", ")}.`;
}

const TEACHES_NOTHING: readonly PredictionReason[] = [
  "cotton-hardly-wets",
  "no-colour-to-deepen",
  "undyed-fibre-carries-the-wetting",
];

/** Where a print would teach almost nothing about wet-out, said before anybody makes one; null elsewhere. */
export function wouldTeachSentence(reasons: readonly PredictionReason[]): string | null {
  return reasons.some((reason) => TEACHES_NOTHING.includes(reason))
    ? "A print on this cloth teaches almost nothing about wet-out, because the change hardly depends on it. With a tint it teaches how strong the tint is."
    : null;
}

/** "Of what test prints taught here, most comes from Forest, mill A, 21 Jan (71 %) and …": the records that mattered most. */
export function teachersSentence(
  teachers: readonly { readonly name: string; readonly share: number }[],
  evidence: EvidenceLevel,
): string | null {
  if (teachers.length === 0) return null;
  const list = listed(teachers.map(({ name, share }) => `${name} (${Math.round(share * 100)}\u00a0%)`));
  return evidence === "model only"
    ? `Other test prints say little here; most of it comes from ${list}.`
    : `Of what test prints taught here, most comes from ${list}.`;
}
