/** The small form of a goods-in check: what it begins with, and the check it stands for or what is missing. */
import type { GeometryDocument, ViewingDocument } from "../colourDocument.ts";
import type { Documents } from "../documents.ts";
import type { Problem } from "../problem.ts";
import type { GoodsInCheck } from "../recordDocument.ts";
import { standing } from "../standing.ts";

export interface GoodsInForm {
  readonly approvedLotId: string | null;
  readonly arrivingLotId: string | null;
  readonly baseId: string | null;
  readonly approvedChange: number | null;
  readonly arrivingChange: number | null;
  readonly viewing: ViewingDocument;
  readonly geometry: GeometryDocument;
  readonly note: string;
  /** The check that this one corrects. */
  readonly supersedesId: string | null;
}

/** A check again, to be corrected. */
export function goodsInCorrection(check: GoodsInCheck): GoodsInForm {
  const { approvedLotId, arrivingLotId, baseId, approvedChange, arrivingChange } = check;
  const { viewing, geometry, note } = check;
  return {
    approvedLotId,
    arrivingLotId,
    baseId,
    approvedChange,
    arrivingChange,
    viewing,
    geometry,
    note,
    supersedesId: check.id,
  };
}

/** The lots of the job's first substitution, and the shop's own instrument. */
export function newGoodsInForm({ job, library }: Documents): GoodsInForm {
  const checked = new Set(standing(library.goodsInChecks).map(({ arrivingLotId }) => arrivingLotId));
  const substituted = job.lines.find(
    (line) => line.substitutedForLotId !== null && !checked.has(line.garmentLotId),
  );
  const last = library.goodsInChecks.at(-1);
  return {
    approvedLotId: substituted?.substitutedForLotId ?? null,
    arrivingLotId: substituted?.garmentLotId ?? null,
    baseId: last?.baseId ?? null,
    approvedChange: null,
    arrivingChange: null,
    ...library.shelf.defaults.instrument,
    note: "",
    supersedesId: null,
  };
}

export type GoodsInOutcome =
  | { readonly ok: true; readonly check: GoodsInCheck }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const missing = (where: string): Problem => ({ code: "goods-in-missing", where });

export function goodsInOfForm(
  form: GoodsInForm,
  signed: Pick<GoodsInCheck, "id" | "by" | "at">,
): GoodsInOutcome {
  const { approvedLotId, arrivingLotId, baseId, approvedChange, arrivingChange } = form;
  const problems: Problem[] = [];
  if (approvedLotId === null) problems.push(missing("approvedLotId"));
  if (arrivingLotId === null) problems.push(missing("arrivingLotId"));
  if (approvedLotId !== null && approvedLotId === arrivingLotId) problems.push(missing("sameLot"));
  if (baseId === null) problems.push(missing("baseId"));
  if (approvedChange === null) problems.push(missing("approvedChange"));
  if (arrivingChange === null) problems.push(missing("arrivingChange"));
  if (signed.by.trim() === "") problems.push(missing("by"));
  if (
    problems.length > 0 ||
    approvedLotId === null ||
    arrivingLotId === null ||
    baseId === null ||
    approvedChange === null ||
    arrivingChange === null
  )
    return { ok: false, problems };
  const { viewing, geometry, note, supersedesId } = form;
  return {
    ok: true,
    check: {
      ...signed,
      approvedLotId,
      arrivingLotId,
      baseId,
      approvedChange,
      arrivingChange,
      viewing,
      geometry,
      note,
      supersedesId,
    },
  };
}
