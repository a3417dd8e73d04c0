/** What the table says of a line beyond its items: the verdict, and a lot that is not the approved or released one. */
import type { Documents } from "../../job/documents.ts";
import { lotChangeSentences } from "../words/lotChangeWords.ts";
import { type ShownVerdict, verdictDetail, verdictShort, verdictWord } from "../words/verdictSentences.ts";
import { lotChangeOf } from "./lotChange.ts";
import type { RunLine } from "./runLines.ts";

interface LotChangeProps {
  readonly documents: Documents;
  readonly run: RunLine;
  readonly columnCount: number;
}

/** In a row of its own, as an override: it has the table's width and cannot be overlooked. */
export function LotChangeRow({ documents, run, columnCount }: LotChangeProps) {
  const change = lotChangeOf(documents, run);
  if (change === null) return null;
  return (
    <tr className="run__override">
      <td colSpan={columnCount}>
        <strong>! another lot</strong> {lotChangeSentences(change, run.lot).join(" ")}
      </td>
    </tr>
  );
}

interface VerdictProps {
  readonly verdict: ShownVerdict | undefined;
  readonly currency: string;
}

export function VerdictWords({ verdict, currency }: VerdictProps) {
  if (verdict === undefined) return null;
  const detail = verdictDetail(verdict, currency);
  return (
    <p className="run__verdict" data-print="hide">
      <strong>{verdictWord(verdict)}</strong>
      {detail !== "" && `: ${detail}`}
    </p>
  );
}

/** The verdict on paper, where the garment's column has room for it. */
export function VerdictOnPaper({ verdict, currency }: VerdictProps) {
  if (verdict === undefined) return null;
  const short = verdictShort(verdict, currency);
  return (
    <p className="run__verdict-paper" data-paper="">
      <strong>{verdictWord(verdict)}</strong>
      {short !== "" && `: ${short}`}
    </p>
  );
}
