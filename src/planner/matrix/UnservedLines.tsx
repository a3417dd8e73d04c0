/** The garments that no mix serves: why, what comes nearest, and what would help. */
import type { UnservedHelp } from "../../core/planning/decisions/unservedReason.ts";
import type { UnservedLine } from "../../engine/decisions/decisionProtocol.ts";
import { lineBand } from "../../job/approvedReference.ts";
import type { Documents } from "../../job/documents.ts";
import type { MixRules, Place } from "../../job/jobDocument.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { counted, HELP_WORDS, nearestSentence, unservedSentence } from "../words/mixSearchSentences.ts";
import { printNames } from "./printNames.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly unserved: readonly UnservedLine[];
  readonly nameOf: (key: string) => string;
  readonly onRules: (change: (rules: MixRules) => MixRules) => void;
  /** Opens the target band. */
  readonly onTarget: () => void;
}

export function UnservedLines({ documents, place, unserved, nameOf, onRules, onTarget }: Props) {
  const { address } = useJobAddress();
  const names = printNames(documents, place, nameOf);
  const bandOf = (lineId: string) => {
    const line = documents.job.lines.find(({ id }) => id === lineId);
    return line === undefined ? place.band : lineBand(documents, line, place).band;
  };
  /** What helps as something to press, where the planner can do it; else as words. */
  const help = (code: UnservedHelp, lineId: string) => {
    const words = HELP_WORDS[code];
    const test = { ...address, view: "tests", tab: "worth-making", line: lineId } as const;
    if (code === "test-print") return <a href={printAddress(test)}>{words}</a>;
    if (code === "exact-tint" && !place.mixRules.exactTints) {
      return (
        <>
          {words}{" "}
          <ActionButton weight="plain" onClick={() => onRules((now) => ({ ...now, exactTints: true }))}>
            Allow exact tints
          </ActionButton>
        </>
      );
    }
    if (code === "wider-band") {
      return (
        <>
          {words}{" "}
          <ActionButton weight="plain" onClick={onTarget}>
            Change the target
          </ActionButton>
        </>
      );
    }
    return words;
  };
  return (
    <section className="proposal__unserved" aria-label="Garments that no mix serves">
      <h4>No mix serves {counted(unserved.length, "garment")}</h4>
      <ul>
        {unserved.map(({ lineId, reason, helps, nearest, nearestDeltaL }) => (
          <li key={lineId}>
            <p>
              <strong>{names.garment(lineId)}</strong> {unservedSentence(reason, bandOf(lineId))}
            </p>
            {nearest !== null && (
              <p className="quiet">
                {nearestSentence(
                  nameOf(nearest.mixId),
                  names.setUp(nearest.setUpId),
                  nearestDeltaL,
                  nearest.chanceInBand,
                )}
              </p>
            )}
            {helps.length > 0 && (
              <ul className="proposal__helps" aria-label="What would help">
                {helps.map((code) => (
                  <li key={code}>{help(code, lineId)}</li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
