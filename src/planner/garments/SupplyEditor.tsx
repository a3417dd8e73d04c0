/** Who supplies the garments, at what price, with how many to spare, and which approved lot they stand in for. */
import type { Documents } from "../../job/documents.ts";
import type { Line } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { Choice, type ChoiceOption } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";

type SupplyFields = Pick<Line, "suppliedBy" | "piecePrice" | "substitutedForLotId" | "sparePieceCount">;

interface Props {
  readonly documents: Documents;
  readonly lotId: string;
  readonly line: SupplyFields;
  readonly onChange: (change: Partial<SupplyFields>) => void;
}

const SUPPLIERS: readonly ChoiceOption<Line["suppliedBy"]>[] = [
  { value: "shop", label: "the shop" },
  { value: "customer", label: "the customer" },
];

/** The schema's range. */
const MOST_PIECES = 1_000_000;

const NOT_SUBSTITUTED = "";

/** The lots that this one can stand in for: approved ones first, then the job's own others. */
function substitutedOptions({ job, library }: Documents, lotId: string, current: string | null) {
  const approved = new Set(library.approvals.map(({ garmentLotId }) => garmentLotId));
  const ofJob = new Set(job.lines.map(({ garmentLotId }) => garmentLotId));
  const lots = library.garmentLots.filter(
    ({ id }) => id !== lotId && (approved.has(id) || ofJob.has(id) || id === current),
  );
  const label = (lot: (typeof lots)[number]) =>
    [lineName(lot), lot.lot === "" ? "" : `lot ${lot.lot}`, approved.has(lot.id) ? "approved" : ""]
      .filter((part) => part !== "")
      .join(", ");
  return [
    { value: NOT_SUBSTITUTED, label: "no, ordered as it is" },
    ...lots
      .toSorted((one, other) => Number(approved.has(other.id)) - Number(approved.has(one.id)))
      .map((lot) => ({ value: lot.id, label: label(lot) })),
  ];
}

export function SupplyEditor({ documents, lotId, line, onChange }: Props) {
  const { currency } = documents.library.shelf.defaults;
  return (
    <fieldset className="editor__block">
      <legend>Supply</legend>
      <div className="editor__row editor__row--two">
        <Choice
          label="Supplied by"
          value={line.suppliedBy}
          options={SUPPLIERS}
          onChange={(suppliedBy) => onChange({ suppliedBy })}
        />
        <NumberEntry
          label="Price of a piece"
          value={line.piecePrice}
          min={0}
          max={100_000}
          {...(currency === "" ? {} : { unit: currency })}
          onCommit={(piecePrice) => onChange({ piecePrice })}
          onClear={() => onChange({ piecePrice: null })}
        />
      </div>
      <NumberEntry
        label="Spare pieces to print tests on"
        value={line.sparePieceCount}
        unit="pieces"
        whole
        min={0}
        max={MOST_PIECES}
        placeholder="not entered"
        hint="Besides the order."
        onCommit={(sparePieceCount) => onChange({ sparePieceCount })}
        onClear={() => onChange({ sparePieceCount: null })}
      />
      <Choice
        label="Stands in for an approved garment"
        value={line.substitutedForLotId ?? NOT_SUBSTITUTED}
        options={substitutedOptions(documents, lotId, line.substitutedForLotId)}
        onChange={(id) => onChange({ substitutedForLotId: id === NOT_SUBSTITUTED ? null : id })}
      />
    </fieldset>
  );
}
