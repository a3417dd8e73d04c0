/** The grams that were really poured, line by line: typed once, corrected by an entry of its own, never overwritten. */
import { useEffect, useRef, useState } from "react";
import { appendPotEntry } from "../../job/edits/pots.ts";
import type { Poured } from "../../job/inkRoom/poured.ts";
import type { Dilution, Pot, PotEntry } from "../../job/potDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { scaleUnit, scaleWords } from "../words/inkFigures.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly sheet: Pot | Dilution;
  readonly poured: Poured;
  readonly ink: InkRoomInUse;
}

/** The schema's largest pot. */
export const GRAMS = { min: 0, max: 1_000_000 };

/** Adds entries to a pot's ledger, signed by whoever weighs; all of one press have the same time. */
export function useRecordEntries(potId: string, startedBy: string) {
  const record = usePlanner((state) => state.record);
  const [signer] = useSigner();
  return (entries: readonly Pick<PotEntry, "kind" | "lineId" | "grams" | "supersedesId">[]) => {
    const at = nowIso();
    record((now) =>
      entries.reduce(
        (documents, entry) =>
          appendPotEntry(documents, {
            ...entry,
            id: newId(),
            potId,
            by: signer === "" ? startedBy : signer,
            at,
            note: "",
          }),
        now,
      ),
    );
  };
}

export function PourLines({ sheet, poured, ink }: Props) {
  const recordEntries = useRecordEntries(sheet.id, sheet.by);
  const [typed, setTyped] = useState<Readonly<Record<string, number>>>({});
  const [correcting, setCorrecting] = useState<string | null>(null);
  const pour = useRef<HTMLDivElement>(null);
  const wasRecorded = useRef(false);
  const { units } = ink;
  const unit = scaleUnit(sheet.scaleStepGrams, units);
  const weigh = (grams: number) => scaleWords(grams, sheet.scaleStepGrams, units);
  const open = poured.lines.filter(({ grams }) => grams === null);
  const ready = open.filter(({ lineId }) => typed[lineId] !== undefined);
  const firstEntry = (lineId: string) =>
    poured.entries.find((entry) => entry.kind === "weighed" && entry.lineId === lineId);

  function record(): void {
    recordEntries(
      ready.flatMap(({ lineId }) => {
        const grams = typed[lineId];
        return grams === undefined ? [] : [{ kind: "weighed" as const, lineId, grams, supersedesId: null }];
      }),
    );
    setTyped({});
    wasRecorded.current = true;
  }

  // What was poured is read next: its percentages take the focus that the button had.
  useEffect(() => {
    if (!wasRecorded.current) return;
    wasRecorded.current = false;
    pour.current?.parentElement?.querySelector<HTMLElement>(".ink__outcome")?.focus();
  });

  return (
    <div className="sheet__pour" ref={pour}>
      <table className="ink__table sheet__lines">
        <caption className="unseen">What was poured</caption>
        <thead>
          <tr>
            <th scope="col">Weighed in</th>
            <th scope="col" className="ink__count">
              By the sheet
            </th>
            <th scope="col">In the pot</th>
          </tr>
        </thead>
        <tbody>
          {poured.lines.map(({ lineId, name, wantedGrams, grams }) => {
            const entry = firstEntry(lineId);
            return (
              <tr key={lineId}>
                <th scope="row">{name}</th>
                <td className="ink__count sheet__grams">{weigh(wantedGrams)}</td>
                <td>
                  {grams === null ? (
                    <MeasureEntry
                      label={`Grams of ${name}`}
                      labelUnseen
                      stored={typed[lineId] ?? null}
                      unit={unit}
                      {...GRAMS}
                      onCommit={(value) => setTyped((before) => ({ ...before, [lineId]: value }))}
                    />
                  ) : (
                    <div className="ink__poured">
                      <span className="sheet__grams">{weigh(grams)}</span>
                      {entry !== undefined && correcting !== lineId && (
                        <ActionButton
                          weight="plain"
                          aria-label={`Correct what was typed for ${name}`}
                          onClick={() => setCorrecting(lineId)}
                        >
                          Mistyped
                        </ActionButton>
                      )}
                      {entry !== undefined && correcting === lineId && (
                        <>
                          <MeasureEntry
                            label={`First weighing of ${name}, corrected`}
                            stored={entry.grams}
                            unit={unit}
                            {...GRAMS}
                            onCommit={(value) => {
                              recordEntries([
                                { kind: "weighed", lineId, grams: value, supersedesId: entry.id },
                              ]);
                              setCorrecting(null);
                            }}
                          />
                          <ActionButton weight="plain" onClick={() => setCorrecting(null)}>
                            Leave it as it is
                          </ActionButton>
                        </>
                      )}
                    </div>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {open.length > 0 && (
        <div className="ink__bar">
          <ActionButton weight="strong" disabled={ready.length === 0} onClick={record}>
            Record what was poured
          </ActionButton>
          <p className="entry__hint">
            Read the scale back for each line: the sheet is what was wanted, the scale is what is in the pot.
          </p>
        </div>
      )}
      <EntryLedger poured={poured} ink={ink} stepGrams={sheet.scaleStepGrams} />
    </div>
  );
}

const KINDS: Readonly<Record<PotEntry["kind"], string>> = {
  weighed: "weighed",
  added: "added",
  "taken-out": "taken out of the mixed ink",
};

function EntryLedger(props: {
  readonly poured: Poured;
  readonly ink: InkRoomInUse;
  readonly stepGrams: number;
}) {
  const { poured, ink, stepGrams } = props;
  const later = poured.entries.filter(
    ({ kind, supersedesId }) => kind !== "weighed" || supersedesId !== null,
  );
  if (later.length === 0) return null;
  const nameOf = (lineId: string | null) => poured.lines.find((line) => line.lineId === lineId)?.name;
  return (
    <ul className="ink__sentences quiet">
      {later.map(({ id, kind, lineId, grams, by, at, supersedesId }) => (
        <li key={id}>
          {scaleWords(grams, stepGrams, ink.units)}
          {lineId !== null && ` of ${nameOf(lineId)}`} {KINDS[kind]}
          {supersedesId !== null && ", in the place of a mistyped entry"}, {by}, {timeWords(at)}.
        </li>
      ))}
    </ul>
  );
}
