/** The quick check at goods-in: the same draw of an uncured base on the approved garment and on the arriving one. */
import { useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { appendGoodsInCheck } from "../../job/edits/records.ts";
import { lineName } from "../../job/lineName.ts";
import { goodsInCorrection, goodsInOfForm, newGoodsInForm } from "../../job/recordBook/goodsInForm.ts";
import type { GoodsInCheck } from "../../job/recordDocument.ts";
import { standing } from "../../job/standing.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { GEOMETRIES, ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";
import { goodsInMissing, goodsInSentence } from "../words/goodsInWords.ts";
import { lotOptions } from "./benchOptions.ts";

const CHOOSE = { value: "", label: "choose" } as const;

export function GoodsInTab({ documents }: { readonly documents: Documents }) {
  const { library, job } = documents;
  const { shelf } = library;
  const record = usePlanner((state) => state.record);
  const [signer, setSigner] = useSigner();
  const [form, setForm] = useState(() => newGoodsInForm(documents));
  const [isAsked, setIsAsked] = useState(false);
  const put = (part: Partial<typeof form>) => setForm((before) => ({ ...before, ...part }));
  const lots = [CHOOSE, ...lotOptions(documents)];
  const made = goodsInOfForm(form, { id: newId(), by: signer, at: nowIso() });
  const keep = () => {
    setIsAsked(!made.ok);
    if (!made.ok) return;
    record((now) => appendGoodsInCheck(now, made.check));
    setForm({ ...newGoodsInForm(documents), viewing: form.viewing, geometry: form.geometry });
  };
  const name = (id: string) => {
    const lot = library.garmentLots.find((one) => one.id === id);
    return lot === undefined ? "a garment no longer in the library" : `${lineName(lot)}, lot ${lot.lot}`;
  };
  return (
    <div className="tests__goods-in">
      <p>
        Draw the same uncured base, in the same thickness, on the approved garment and on the one that
        arrived. Read the change of L* on each within ten minutes. It is a quick look, and counts for less
        than a print.
      </p>
      <form className="tests__form" onSubmit={(event) => event.preventDefault()} noValidate>
        <div className="fields">
          <Choice
            label="Approved garment"
            value={form.approvedLotId ?? ""}
            options={lots}
            onChange={(value) => put({ approvedLotId: value === "" ? null : value })}
          />
          <Choice
            label="Arriving garment"
            value={form.arrivingLotId ?? ""}
            options={lots}
            onChange={(value) => put({ arrivingLotId: value === "" ? null : value })}
          />
          <Choice
            label="Base drawn"
            value={form.baseId ?? ""}
            options={[CHOOSE, ...shelf.bases.map((base) => ({ value: base.id, label: base.name }))]}
            onChange={(value) => put({ baseId: value === "" ? null : value })}
          />
          <NumberEntry
            label="Change of L* on the approved one, darker is negative"
            value={form.approvedChange}
            min={-120}
            max={120}
            onCommit={(approvedChange) => put({ approvedChange })}
            onClear={() => put({ approvedChange: null })}
          />
          <NumberEntry
            label="Change of L* on the arriving one, darker is negative"
            value={form.arrivingChange}
            min={-120}
            max={120}
            onCommit={(arrivingChange) => put({ arrivingChange })}
            onClear={() => put({ arrivingChange: null })}
          />
          <Choice
            label="Light"
            value={form.viewing.illuminant}
            options={ILLUMINANTS}
            onChange={(illuminant) => put({ viewing: { ...form.viewing, illuminant } })}
          />
          <Choice
            label="Observer"
            value={form.viewing.observer}
            options={OBSERVERS}
            onChange={(observer) => put({ viewing: { ...form.viewing, observer } })}
          />
          <Choice
            label="Geometry"
            value={form.geometry}
            options={GEOMETRIES}
            onChange={(geometry) => put({ geometry })}
          />
          <TextEntry label="Drawn by" value={signer} maxLength={120} onCommit={setSigner} />
          <TextEntry label="Note" value={form.note} maxLength={2000} onCommit={(note) => put({ note })} />
        </div>
        {form.supersedesId !== null && <p>This corrects a check of the book, which then no longer counts.</p>}
        {made.ok && <p role="status">{goodsInSentence(made.check)}</p>}
        {isAsked && !made.ok && (
          <p role="alert">
            <strong>! {goodsInMissing(made.problems)}</strong>
          </p>
        )}
        <div className="acts">
          <ActionButton weight="strong" onClick={keep}>
            Keep this check
          </ActionButton>
          {form.supersedesId !== null && (
            <ActionButton onClick={() => setForm(newGoodsInForm(documents))}>Leave it as it was</ActionButton>
          )}
        </div>
      </form>
      <h3>Checks in the book</h3>
      <GoodsInList
        checks={standing(library.goodsInChecks)}
        isOfJob={(check) => job.lines.some(({ garmentLotId }) => garmentLotId === check.arrivingLotId)}
        name={name}
        onCorrect={(check) => setForm(goodsInCorrection(check))}
      />
    </div>
  );
}

interface ListProps {
  readonly checks: readonly GoodsInCheck[];
  readonly isOfJob: (check: GoodsInCheck) => boolean;
  readonly name: (lotId: string) => string;
  readonly onCorrect: (check: GoodsInCheck) => void;
}

function GoodsInList({ checks, isOfJob, name, onCorrect }: ListProps) {
  if (checks.length === 0) return <p>None yet.</p>;
  return (
    <ul className="tests__others">
      {checks.toReversed().map((check) => (
        <li key={check.id}>
          <strong>{name(check.arrivingLotId)}</strong>
          {!isOfJob(check) && " (not in this job)"} against {name(check.approvedLotId)}:{" "}
          {goodsInSentence(check)}{" "}
          <span className="quiet">
            {check.by === "" ? "" : `${check.by}, `}
            {timeWords(check.at)}
            {check.note === "" ? "" : `. ${check.note}`}
          </span>{" "}
          <ActionButton
            weight="plain"
            data-print="hide"
            aria-label={`Correct the check of ${name(check.arrivingLotId)}`}
            onClick={() => onCorrect(check)}
          >
            Correct it
          </ActionButton>
        </li>
      ))}
    </ul>
  );
}
