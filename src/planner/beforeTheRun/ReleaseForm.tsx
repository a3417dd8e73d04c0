/** Release, hold and override of one line: what blocks is said, and an override costs a reason. */
import { useState } from "react";
import { ActionButton } from "../controls/ActionButton.tsx";
import { LongText, tooLong } from "../controls/LongText.tsx";
import { Notice } from "../controls/Notice.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { timeWords } from "../words/checklistSentences.ts";
import type { RunLine } from "./runLines.ts";
import { openNames } from "./standingWords.ts";

export type LineAction = "release" | "hold" | "override";

interface Props {
  readonly run: RunLine;
  readonly signer: string;
  /** Whether it was taken down; where not, the reason stays. */
  readonly onAct: (action: LineAction, note: string) => boolean;
}

const LONGEST_NOTE = 2000;

/** Why the run is not released, in one sentence; null where nothing keeps it. */
function blockedSentence({ standing, open, entries, chosen }: RunLine): string | null {
  if (standing === "pending") return "The prediction is on its way.";
  if (chosen.kind === "failed") return "The prediction failed: reload the page.";
  const waits = open.length === 0 ? null : openNames(open);
  if (standing === "held") {
    return `Held by ${entries.standing?.signer ?? ""}, ${timeWords(entries.standing?.at ?? "")}.${waits === null ? "" : ` Open: ${waits}.`}`;
  }
  if (standing === "blocked") return `Blocked by ${waits}.`;
  return null;
}

export function ReleaseForm({ run, signer, onAct }: Props) {
  const [reason, setReason] = useState("");
  const [isAsked, setIsAsked] = useState(false);
  const { standing, entries, open } = run;
  // The button of a hold or an override goes with its use.
  const part = useLostFocus<HTMLElement>(
    ".action--strong:not(:disabled), textarea",
    `${standing} ${entries.isHeld} ${entries.override?.id ?? ""}`,
  );
  const sentence = blockedSentence(run);
  const needsChoice = open.some(({ item }) => item.kind === "choice");
  const isOpen = open.length > 0 && entries.override === null;
  const canRelease =
    standing !== "pending" && standing !== "released" && run.chosen.kind === "predicted" && !isOpen;
  const as = signer === "" ? "" : ` as ${signer}`;
  const act = (action: LineAction) => {
    if (action === "override" && reason.trim() === "") {
      setIsAsked(true);
      return;
    }
    if (tooLong(reason, LONGEST_NOTE) !== null) return;
    if (!onAct(action, action === "release" ? "" : reason.trim())) return;
    setReason("");
    setIsAsked(false);
  };
  return (
    <section className="run__release" aria-label="Release" ref={part}>
      <h3>Release</h3>
      {sentence !== null && <p role="status">{sentence}</p>}
      {standing === "released" && (
        <p role="status">
          Released by {entries.standing?.signer}, {timeWords(entries.standing?.at ?? "")}.
        </p>
      )}
      {standing === "blocked" && entries.isReleased && (
        <Notice kind="caution">
          It was released by {entries.standing?.signer}, {timeWords(entries.standing?.at ?? "")}; since then
          something that was signed no longer is.
        </Notice>
      )}
      {entries.staleRelease !== null && (
        <Notice kind="caution">
          The release by {entries.staleRelease.signer}, {timeWords(entries.staleRelease.at)}, was for an
          earlier choice and does not count for this one.
        </Notice>
      )}
      {entries.overrides.map((override) => (
        <Notice kind="caution" key={override.id}>
          Override by {override.signer}, {timeWords(override.at)}
          {entries.override === override ? "" : " (no longer in force)"}: {override.note}
        </Notice>
      ))}
      {entries.standing !== null && entries.standing.note !== "" && (
        <p className="run__note">Note: {entries.standing.note}</p>
      )}
      <div className="run__acts">
        <ActionButton weight="strong" disabled={!canRelease} onClick={() => act("release")}>
          Release the run{as}
        </ActionButton>
      </div>
      {!needsChoice && (
        <>
          <LongText
            label="Reason, for a hold or an override"
            value={reason}
            maxLength={LONGEST_NOTE}
            problem={isAsked ? "An override needs a reason." : null}
            onChange={(text) => {
              setReason(text);
              setIsAsked(false);
            }}
          />
          <div className="run__acts">
            {!entries.isHeld && <ActionButton onClick={() => act("hold")}>Hold the run{as}</ActionButton>}
            {isOpen && (
              <ActionButton onClick={() => act("override")}>Override the open items{as}</ActionButton>
            )}
          </div>
        </>
      )}
    </section>
  );
}
