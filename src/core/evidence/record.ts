/** What evidence is made of: a print whose garment, inks and set-up are known by key, and what was read of it. */
import type { Lab, Viewing } from "../colorimetry/viewing.ts";
import type { Application, Garment, InkMix } from "../prediction/inputs.ts";

/**
 * A garment lot and what it may share with others. Keys are opaque; mill and colourway count within their style, so the
 * same mill name under two styles is two mills.
 */
export interface EvidenceGarment {
  readonly lotKey: string;
  readonly millKey: string;
  readonly colourwayKey: string;
  readonly styleKey: string;
  readonly garment: Garment;
}

/** A print, made or to be made. */
export interface EvidencePrint {
  readonly garment: EvidenceGarment;
  readonly mix: InkMix;
  /** Key of the base or colourant behind each part of the mix, by position. */
  readonly itemKeys: readonly string[];
  readonly application: Application;
  readonly setUpKey: string;
  /** Whether `application.depositUm` was weighed on this very print: then it says nothing of the set-up's usual deposit. */
  readonly depositOfThisPrintWeighed: boolean;
}

/** What an instrument read: means over pairs, bare cloth and print on one garment, under the record's viewing. */
export interface PairReading {
  readonly kind: "pair";
  readonly bare: Lab;
  readonly printed: Lab;
  readonly pairCount: number;
  /** Garments that the pairs were spread over. */
  readonly pieceCount: number;
  /** Standard deviation of the pair difference in L*; null where unknown. */
  readonly sdPairDeltaL: number | null;
}

/** What an eye judged against the grey scale for change in colour (ISO 105-A02): 5 no change, 1 the strongest, half steps. */
export interface ByEyeReading {
  readonly kind: "by-eye";
  readonly grade: number;
  readonly direction: "darker" | "lighter";
}

export interface EvidenceRecord {
  readonly id: string;
  /** The physical print: readings of one print after 1 h, 24 h or a wash share it, two prints of one recipe do not. */
  readonly printKey: string;
  readonly print: EvidencePrint;
  readonly viewing: Viewing;
  readonly reading: PairReading | ByEyeReading;
  /** ISO 8601 in UTC; used for order only. */
  readonly at: string;
  readonly washCount: number;
}

/** The same quick draw of uncured base on the approved sample and on the arriving garment, both as change of L*. */
export interface GoodsInRecord {
  readonly id: string;
  readonly approved: EvidenceGarment;
  readonly arriving: EvidenceGarment;
  /** Base, and the mix of it alone, that was drawn. */
  readonly baseKey: string;
  readonly mix: InkMix;
  readonly viewing: Viewing;
  readonly approvedDeltaL: number;
  readonly arrivingDeltaL: number;
}
