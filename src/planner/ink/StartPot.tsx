/** Starts a pot: who weighs it and from which lots; its sheet is then on record as it stands now. */
import { useEffect, useRef, useState } from "react";
import { appendPot } from "../../job/edits/pots.ts";
import type { InkBatch, PartLots } from "../../job/inkRoom/inkBatch.ts";
import { potToWrite } from "../../job/inkRoom/potToWrite.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
  readonly potNumber: number;
  /** The pot on record in whose place this one comes. */
  readonly supersedesId: string | null;
  readonly onDone: () => void;
}

export function StartPot({ batch, ink, potNumber, supersedesId, onDone }: Props) {
  const record = usePlanner((state) => state.record);
  const [signer, setSigner] = useSigner();
  const [codes, setCodes] = useState<Readonly<Record<string, string>>>({});
  const [isAsked, setIsAsked] = useState(false);
  const form = useRef<HTMLFieldSetElement>(null);
  useEffect(() => form.current?.querySelector("input")?.focus(), []);

  function start(): void {
    if (signer === "") {
      setIsAsked(true);
      form.current?.querySelector("input")?.focus();
      return;
    }
    const written = { id: newId(), by: signer, at: nowIso(), note: "", potNumber, lotCodes: codes };
    record((now) => appendPot(now, { ...potToWrite(now, batch, written), supersedesId }));
    onDone();
  }

  return (
    <fieldset className="ink__start" ref={form} aria-label={`Start pot ${potNumber}`}>
      {supersedesId !== null && (
        <Notice kind="caution">
          What was weighed into this pot stays on record and no longer counts. Start it anew only for a new
          pot.
        </Notice>
      )}
      <div className="ink__bar">
        <TextEntry
          label="Weighed by"
          value={signer}
          maxLength={120}
          onCommit={(name) => {
            setSigner(name);
            setIsAsked(false);
          }}
        />
        {batch.lots.map((part) => (
          <LotEntry
            key={part.itemId}
            part={part}
            code={codes[part.itemId] ?? part.chosen?.code ?? ""}
            onCode={(code) => setCodes({ ...codes, [part.itemId]: code })}
          />
        ))}
      </div>
      {isAsked && (
        <p className="entry__problem" role="alert">
          Write who weighs it first.
        </p>
      )}
      <div className="ink__bar">
        <ActionButton weight="strong" onClick={start}>
          Start pot {potNumber}
          {ink.room.batches.length > 1 && ` of ${batch.mixName}`}
        </ActionButton>
        <ActionButton onClick={onDone}>Do not start it</ActionButton>
      </div>
    </fieldset>
  );
}

interface LotProps {
  readonly part: PartLots;
  readonly code: string;
  readonly onCode: (code: string) => void;
}

function LotEntry({ part, code, onCode }: LotProps) {
  const expired = part.expired.some((lot) => lot.code === code);
  return (
    <TextEntry
      label={`Lot of ${part.name}`}
      value={code}
      maxLength={120}
      suggestions={[...part.usable, ...part.expired].map((lot) => lot.code)}
      hint={expired ? "! This lot is past its day." : "The code on the lid; the first received comes first."}
      onCommit={onCode}
    />
  );
}
