/** What heads a column: the mix, its tint in words and under the finger, and the set-up it is printed with. */
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { mixHeading } from "../words/mixWords.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import { MixTint } from "./MixTint.tsx";
import type { MatrixCandidate } from "./matrixInputs.ts";

interface Props {
  readonly column: MatrixCandidate;
  readonly shelf: Shelf;
  readonly onChange: (candidateId: string) => void;
}

export function ColumnHead({ column, shelf, onChange }: Props) {
  const { mix, setUp, candidate, problems } = column;
  const heading = mix === null ? null : mixHeading(mix, shelf);
  const title = heading?.title ?? "A mix no longer in the job";
  return (
    <div className="column-head">
      <p className="column-head__name">{title}</p>
      <p className="column-head__recipe">{heading?.recipe}</p>
      <div className="column-head__set-up">
        <span className="quiet">{setUp?.name ?? "no set-up"}</span>
        <ActionButton
          weight="plain"
          data-change-mix={candidate.id}
          aria-label={`Change ${title}, ${heading?.recipe ?? ""}`}
          onClick={() => onChange(candidate.id)}
        >
          Change
        </ActionButton>
      </div>
      {mix !== null && <MixTint mix={mix} shelf={shelf} />}
      {problems.slice(0, 1).map((problem) => (
        <p key={problem.code} className="column-head__problem">
          ! {sentenceForProblem(problem)}
        </p>
      ))}
    </div>
  );
}
