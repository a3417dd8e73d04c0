/** Which garment at which place is on the press: a list where there is room, else one big choice. */
import type { PressRun } from "../../job/press/pressRun.ts";
import type { RunLine } from "../beforeTheRun/runLines.ts";
import { Choice } from "../controls/Choice.tsx";
import { ACTION_WORDS } from "../words/pressSentences.ts";

export interface PressLine {
  readonly of: RunLine;
  readonly run: PressRun;
}

interface Props {
  readonly lines: readonly PressLine[];
  readonly openKey: string | null;
  readonly onOpen: (line: PressLine) => void;
}

/** What stands of a run, in a few words. */
export function pressStanding({ of, run: { latest, points } }: PressLine): string {
  const released = of.standing === "released" ? "" : ", not released";
  if (latest === null) return `no first-off yet${released}`;
  const pulls = points.filter(({ entry }) => entry.kind === "pull").length;
  const count = pulls === 0 ? "first-off" : `${pulls} ${pulls === 1 ? "pull" : "pulls"}`;
  return `${ACTION_WORDS[latest.entry.said.action].toLowerCase()} (${count})${released}`;
}

const title = ({ of }: PressLine) => `${of.name}, ${of.place.name}`;

/** One big choice, where there is no room for the list. */
export function PressChoice({ lines, openKey, onOpen }: Props) {
  return (
    <div className="press__choice">
      <Choice
        label="Garment and place"
        labelUnseen
        value={openKey ?? ""}
        options={[
          ...(openKey === null ? [{ value: "", label: "choose a garment" }] : []),
          ...lines.map((line) => ({ value: line.of.key, label: `${title(line)}: ${pressStanding(line)}` })),
        ]}
        onChange={(key) => {
          const line = lines.find(({ of }) => of.key === key);
          if (line !== undefined) onOpen(line);
        }}
      />
    </div>
  );
}

export function PressLines({ lines, openKey, onOpen }: Props) {
  return (
    <nav aria-label="Garments on the press" className="press__list">
      <ul>
        {lines.map((line) => (
          <li key={line.of.key}>
            <button
              type="button"
              className="press__line"
              aria-current={line.of.key === openKey ? "true" : undefined}
              onClick={() => onOpen(line)}
            >
              {title(line)}
              <span className="press__small">{line.of.mixName}</span>
              <span className="press__small">{pressStanding(line)}</span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
