/** What the mix search of a place is to heed: how many mixes, of what, tinted how finely. */
import type { Place, MixRules as Rules } from "../../job/jobDocument.ts";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { Tick } from "../controls/Tick.tsx";

interface Props {
  readonly place: Place;
  readonly onRules: (change: (rules: Rules) => Rules) => void;
}

export function MixRules({ place, onRules }: Props) {
  const { mixRules, band } = place;
  const change = (part: Partial<Rules>) => onRules((now) => ({ ...now, ...part }));
  return (
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
          label="Exact tints too"
          checked={mixRules.exactTints}
          onChange={(exactTints) => change({ exactTints })}
        />
      )}
    </div>
  );
}
