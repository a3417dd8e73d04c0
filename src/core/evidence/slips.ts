/** The slips of the bench that evidence looks for, and a record as it reads once a slip is undone. */
import type { Viewing } from "../colorimetry/viewing.ts";
import type { InkMix, MixPart } from "../prediction/inputs.ts";
import { mainBaseKey } from "./cell.ts";
import type { EvidenceRecord } from "./record.ts";
import { changeCovariance, relit } from "./relight.ts";

export type Slip = "tint-times-ten" | "swapped-pair" | "other-light";

/** What a cloth instrument and a paper instrument are usually set to: the one light that is mistaken for the other. */
const MISTAKEN_FOR: readonly (readonly [Viewing, Viewing])[] = [
  [
    { illuminant: "D65", observer: "10deg" },
    { illuminant: "D50", observer: "2deg" },
  ],
  [
    { illuminant: "D50", observer: "2deg" },
    { illuminant: "D65", observer: "10deg" },
  ],
];

/** The mix with a tenth of its colourants, its largest base taking up the rest; null for a mix without a base or tint. */
function withTenthOfTint(mix: InkMix, itemKeys: readonly string[]): InkMix | null {
  const at = itemKeys.indexOf(mainBaseKey(mix, itemKeys));
  if (at < 0 || mix.parts[at]!.kind !== "base") return null;
  let freed = 0;
  const parts = mix.parts.map((part): MixPart => {
    if (part.kind === "base") return part;
    freed += 0.9 * part.massFraction;
    return { ...part, massFraction: 0.1 * part.massFraction };
  });
  if (freed === 0) return null;
  const base = parts[at]!;
  parts[at] = { ...base, massFraction: base.massFraction + freed };
  return { ...mix, parts };
}

export interface UndoneSlip {
  readonly slip: Slip;
  readonly record: EvidenceRecord;
  /** How unsure the undoing itself is: covariance (3 x 3) of the change from bare to print, and of the bare reading. */
  readonly ofChange: Float64Array | null;
  readonly ofBare: Float64Array | null;
}

/** Relighting is slow, and a record is asked about anew whenever another is set aside. */
const known = new WeakMap<EvidenceRecord, readonly UndoneSlip[]>();

/** The record as it would read without each slip that it may hold; a wrong light on the print only, and on both readings. */
export function undoneSlips(record: EvidenceRecord): readonly UndoneSlip[] {
  let found = known.get(record);
  if (found === undefined) {
    found = undoneSlipsOf(record);
    known.set(record, found);
  }
  return found;
}

function undoneSlipsOf(record: EvidenceRecord): UndoneSlip[] {
  const found: UndoneSlip[] = [];
  const sure = { ofChange: null, ofBare: null };
  const { print, reading, viewing } = record;
  const mix = withTenthOfTint(print.mix, print.itemKeys);
  if (mix !== null)
    found.push({ slip: "tint-times-ten", record: { ...record, print: { ...print, mix } }, ...sure });
  if (reading.kind !== "pair") return found;
  const { bare, printed } = reading;
  const swapped = { ...reading, bare: printed, printed: bare };
  found.push({ slip: "swapped-pair", record: { ...record, reading: swapped }, ...sure });
  for (const [stated, actual] of MISTAKEN_FOR) {
    if (stated.illuminant !== viewing.illuminant || stated.observer !== viewing.observer) continue;
    const print = relit(printed, actual, stated);
    if (print === null) continue;
    found.push({
      slip: "other-light",
      record: { ...record, reading: { ...reading, printed: print.lab } },
      ofChange: print.covariance,
      ofBare: null,
    });
    const cloth = relit(bare, actual, stated);
    if (cloth === null) continue;
    found.push({
      slip: "other-light",
      record: { ...record, reading: { ...reading, bare: cloth.lab, printed: print.lab } },
      ofChange: changeCovariance(cloth, print),
      ofBare: cloth.covariance,
    });
  }
  return found;
}
