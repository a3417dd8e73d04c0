/** A new master: which colourant, how much of it, in which base; its sheet as it would be weighed. */
import { useState } from "react";
import { appendDilution } from "../../job/edits/pots.ts";
import {
  type DilutionRequest,
  dilutionSheet,
  dilutionToWrite,
  sheetLineName,
} from "../../job/inkRoom/masters.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { DayEntry } from "../controls/DayEntry.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { Notice } from "../controls/Notice.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { scaleWords } from "../words/inkFigures.ts";
import { sheetNoticeSentence, sheetProblemSentence } from "../words/inkSentences.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

/** What a shop usually keeps, and how much is made at once. From memory and invented. */
const FIRST_FRACTION = 0.1;
const FIRST_GRAMS = 500;
const GRAMS = { min: 1, max: 100_000 };

const named = (items: readonly { readonly id: string; readonly name: string }[]) =>
  items.map(({ id, name }) => ({ value: id, label: name }));

interface Props {
  readonly ink: InkRoomInUse;
  readonly onDone: () => void;
}

export function NewDilution({ ink, onDone }: Props) {
  const { shelf, units } = ink;
  const record = usePlanner((state) => state.record);
  const [signer, setSigner] = useSigner();
  const [isAsked, setAsked] = useState(false);
  const finest = shelf.defaults.scales.toSorted((one, other) => one.stepGrams - other.stepGrams)[0];
  const [request, setRequest] = useState<DilutionRequest>(() => ({
    colourantId:
      (shelf.colourants.find(({ optics }) => optics.kind === "black") ?? shelf.colourants[0])?.id ?? "",
    baseId: (shelf.bases.find(({ reference }) => reference) ?? shelf.bases[0])?.id ?? "",
    massFraction: FIRST_FRACTION,
    batchGrams: FIRST_GRAMS,
    scaleStepGrams: finest?.stepGrams ?? 1,
    madeOn: ink.today,
    expiresOn: null,
  }));
  const set = (part: Partial<DilutionRequest>) => setRequest((before) => ({ ...before, ...part }));
  const datesProblem =
    request.expiresOn !== null && request.expiresOn < request.madeOn
      ? "It cannot be used up before it is made."
      : null;
  const isDilution = request.massFraction > 0 && request.massFraction < 1;
  const sheet = isDilution && datesProblem === null ? dilutionSheet(shelf, request) : null;
  const words = { units, scaleStepGrams: request.scaleStepGrams, nameOf: ink.nameOf };

  function start(): void {
    if (signer === "") {
      setAsked(true);
      return;
    }
    const written = { id: newId(), by: signer, at: nowIso(), note: "", baseLots: [] };
    record((now) => appendDilution(now, dilutionToWrite(now.library.shelf, request, written)));
    onDone();
  }

  return (
    <fieldset className="ink__start" aria-label="New master">
      <div className="ink__bar">
        <Choice
          label="Colourant"
          value={request.colourantId}
          options={named(shelf.colourants)}
          onChange={(colourantId) => set({ colourantId })}
        />
        <PercentEntry
          label="Part of it"
          fraction={request.massFraction}
          onCommit={(massFraction) => set({ massFraction })}
        />
        <Choice
          label="In base"
          value={request.baseId}
          options={named(shelf.bases)}
          onChange={(baseId) => set({ baseId })}
        />
        <MeasureEntry
          label="How much"
          stored={request.batchGrams}
          unit={shopUnits(units).mass}
          {...GRAMS}
          onCommit={(batchGrams) => set({ batchGrams })}
        />
        <Choice
          label="Scale"
          value={String(request.scaleStepGrams)}
          options={shelf.defaults.scales.map(({ name, stepGrams }) => ({
            value: String(stepGrams),
            label: name,
          }))}
          onChange={(step) => set({ scaleStepGrams: Number(step) })}
        />
        <DayEntry
          label="Made on"
          day={request.madeOn}
          onCommit={(madeOn) => set({ madeOn: madeOn ?? ink.today })}
        />
        <DayEntry
          label="Use by"
          day={request.expiresOn}
          hint="From the ink maker, or the shop's own rule."
          onCommit={(expiresOn) => set({ expiresOn })}
        />
        <TextEntry label="Weighed by" value={signer} maxLength={120} onCommit={setSigner} />
      </div>
      {!isDilution && (
        <p className="entry__problem">A master holds more than 0 % and less than 100 % of its colourant.</p>
      )}
      {datesProblem !== null && <p className="entry__problem">{datesProblem}</p>}
      {sheet?.ok === true && (
        <ol className="sheet__planned">
          {sheet.sheet.lines.map(({ id, grams }) => (
            <li key={id}>
              {sheetLineName(id, shelf)}{" "}
              <span className="sheet__grams">{scaleWords(grams, request.scaleStepGrams, units)}</span>
            </li>
          ))}
        </ol>
      )}
      {sheet?.ok === false && (
        <Notice kind="problem">
          {sheet.problems.map((problem) => (
            <p key={problem.code}>{sheetProblemSentence(problem, words)}</p>
          ))}
        </Notice>
      )}
      {sheet?.ok === true &&
        sheet.sheet.notices.map((notice) => (
          <p key={`${notice.code} ${notice.itemId}`}>{sheetNoticeSentence(notice, words)}</p>
        ))}
      {isAsked && signer === "" && (
        <p className="entry__problem" role="alert">
          Write who weighs it first.
        </p>
      )}
      <div className="ink__bar">
        <ActionButton weight="strong" disabled={sheet?.ok !== true} onClick={start}>
          Start this master
        </ActionButton>
        <ActionButton onClick={onDone}>Do not start it</ActionButton>
      </div>
    </fieldset>
  );
}
