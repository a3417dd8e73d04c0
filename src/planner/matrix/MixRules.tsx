/** What the mix search of a place is to heed: how many mixes, of what, which to keep and which to leave out. */
import type { Documents } from "../../job/documents.ts";
import type { Place, MixRules as Rules } from "../../job/jobDocument.ts";
import { mixOf } from "../../job/lookup.ts";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
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

export function MixRules({ documents, place, nameOf, onRules }: Props) {
  const { mixRules, band } = place;
  const change = (part: Partial<Rules>) => onRules((now) => ({ ...now, ...part }));
  return (
    <>
      <div className="find-mixes__rules">
        <NumberEntry
          label="At most … mixes"
          value={mixRules.atMostMixes}
          min={1}
          max={100}
          whole
          placeholder="no limit"
          onCommit={(atMostMixes) => change({ atMostMixes })}
          onClear={() => change({ atMostMixes: null })}
        />
        <Tick
          label="Only what is in stock"
          checked={mixRules.stockOnly}
          onChange={(stockOnly) => change({ stockOnly })}
        />
        <Tick
          label="Only low-cure bases"
          checked={mixRules.lowCureOnly}
          onChange={(lowCureOnly) => change({ lowCureOnly })}
        />
        {band.deltaL <= 0 && (
          <Tick
            label="Exact tints besides the ladder"
            checked={mixRules.exactTints}
            onChange={(exactTints) => change({ exactTints })}
          />
        )}
      </div>
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
    </>
  );
}
