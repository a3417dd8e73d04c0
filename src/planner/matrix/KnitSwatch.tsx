/** The cloth of a cell: the print crosses it from its light to its dark end, its edge says how well it is known. */
import type { EdgeForm } from "../../artwork/printedCloth.ts";
import type { EvidenceLevel } from "../../core/prediction/prediction.ts";
import { KnitCanvas } from "../look/KnitCanvas.tsx";

export const SWATCH_HEIGHT_PX = 72;

export const EDGE_FORMS: Readonly<Record<EvidenceLevel, EdgeForm>> = {
  "this lot": "clean",
  "related prints": "long-dashed",
  "model only": "dotted",
};

interface Props {
  readonly widthPx: number;
  readonly heightPx?: number;
  readonly bareHex: string;
  readonly lightHex: string;
  readonly darkHex: string;
  readonly evidence: EvidenceLevel;
}

/** The words of the cell say what it shows. */
export function KnitSwatch(props: Props) {
  const { widthPx, heightPx = SWATCH_HEIGHT_PX, bareHex, lightHex, darkHex, evidence } = props;
  const print = { lightHex, darkHex, edge: EDGE_FORMS[evidence] };
  return <KnitCanvas widthPx={widthPx} heightPx={heightPx} bareHex={bareHex} print={print} />;
}
