/** What a readings file does not say and somebody has to: its light, observer, geometry. Never assumed. */
import type { Answers } from "../../exchange/readings/answerAsked.ts";
import type { Asked } from "../../exchange/readings/readSample.ts";
import { Choice } from "../controls/Choice.tsx";
import { GEOMETRIES, ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";

interface Props {
  readonly asked: readonly Asked[];
  readonly answers: Answers;
  readonly onAnswer: (answers: Answers) => void;
}

const UNKNOWN = { value: "", label: "choose" } as const;

export function FileAsks({ asked, answers, onAnswer }: Props) {
  if (asked.length === 0) return null;
  return (
    <fieldset className="fields-block">
      <legend>The file does not say</legend>
      <div className="fields">
        {asked.includes("light") && (
          <Choice
            label="Light of these readings"
            value={answers.light ?? ""}
            options={[UNKNOWN, ...ILLUMINANTS]}
            onChange={(light) => onAnswer({ ...answers, light: light === "" ? null : light })}
          />
        )}
        {asked.includes("observer") && (
          <Choice
            label="Observer of these readings"
            value={answers.observer ?? ""}
            options={[UNKNOWN, ...OBSERVERS]}
            onChange={(observer) => onAnswer({ ...answers, observer: observer === "" ? null : observer })}
          />
        )}
        {asked.includes("geometry") && (
          <Choice
            label="Geometry of these readings"
            value={answers.geometry ?? ""}
            options={[UNKNOWN, ...GEOMETRIES]}
            onChange={(geometry) => onAnswer({ ...answers, geometry: geometry === "" ? null : geometry })}
          />
        )}
      </div>
    </fieldset>
  );
}
