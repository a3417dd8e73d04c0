/** The mixes that the search is to keep or to leave out: those of the matrix, and those that a rule names. */
import type { Documents } from "../../job/documents.ts";
import type { Place, MixRules as Rules } from "../../job/jobDocument.ts";
import { mixOf } from "../../job/lookup.ts";
import { MixFateButtons } from "./MixFateButtons.tsx";
import { keyOfMix } from "./proposalOutline.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly nameOf: (key: string) => string;
  readonly onRules: (change: (rules: Rules) => Rules) => void;
}

/** Those of the matrix, and those that a rule names; each once. */
function ruledKeys({ job, library }: Documents, { candidates, mixRules }: Place): string[] {
  const ofMatrix = candidates.flatMap(({ mixId }) => {
    const mix = mixOf(job, mixId);
    return (mix === null ? null : keyOfMix(mix, library.shelf)) ?? [];
  });
  return [...new Set([...mixRules.keptRecipes, ...mixRules.forbiddenRecipes, ...ofMatrix])];
}

function ruledWords({ keptRecipes, forbiddenRecipes }: Rules): string {
  const words = [
    ...(keptRecipes.length === 0 ? [] : [`${keptRecipes.length} kept`]),
    ...(forbiddenRecipes.length === 0 ? [] : [`${forbiddenRecipes.length} left out`]),
  ];
  return words.length === 0 ? "none" : words.join(", ");
}

export function RuledMixes({ documents, place, nameOf, onRules }: Props) {
  const { mixRules } = place;
  return (
    <details className="find-mixes__ruled">
      <summary>Mixes to keep or leave out: {ruledWords(mixRules)}</summary>
      <ul>
        {ruledKeys(documents, place).map((key) => (
          <li key={key}>
            <span>{nameOf(key)}</span>
            <MixFateButtons mixKey={key} name={nameOf(key)} rules={mixRules} onRules={onRules} />
          </li>
        ))}
      </ul>
    </details>
  );
}
