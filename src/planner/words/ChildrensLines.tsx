/** The limits cited for a children's product, each with where it is from and how that is known. */
import type { ChildrensLine } from "../../core/planning/ink/childrensLimits.ts";
import { CHILDRENS_STATUS, childrensLineSentence } from "./inkRoomWords.ts";

interface Props {
  readonly lines: readonly ChildrensLine[];
  readonly className: string;
}

export function ChildrensLines({ lines, className }: Props) {
  return (
    <ul className={className} aria-label="Limits for children's products">
      {lines.map((line) => (
        <li key={line.code}>
          {childrensLineSentence(line)}
          {line.source !== null && (
            <span className="quiet">
              {" "}
              {line.source}; {CHILDRENS_STATUS[line.status]}.
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}
