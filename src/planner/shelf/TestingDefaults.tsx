/** How test prints are made in this shop: how many in a day, how long they rest, on how many pieces and pairs. */
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { NumberEntry } from "../controls/NumberEntry.tsx";

type Testing = ShopDefaults["testing"];

interface Props {
  readonly testing: Testing;
  readonly onChange: (testing: Testing) => void;
}

/** The schema's ranges. */
const MOST_PER_DAY = 1000;
const MOST_REST_DAYS = 30;
const MOST_PIECES = 100;
const MOST_PAIRS = 1000;

export function TestingDefaults({ testing, onChange }: Props) {
  const set = (part: Partial<Testing>) => onChange({ ...testing, ...part });
  return (
    <fieldset className="fields-block">
      <legend>Test prints</legend>
      <div className="fields">
        <NumberEntry
          label="Printed and read in a day"
          value={testing.perDay}
          whole
          min={1}
          max={MOST_PER_DAY}
          placeholder="as many as wanted"
          onCommit={(perDay) => set({ perDay })}
          onClear={() => set({ perDay: null })}
        />
        <NumberEntry
          label="Rest before they are read"
          value={testing.restDays}
          unit="days"
          whole
          min={0}
          max={MOST_REST_DAYS}
          hint="Cooling, and waiting for dye that moves into the ink."
          onCommit={(restDays) => set({ restDays })}
        />
        <NumberEntry
          label="Pieces of one test"
          value={testing.pieceCount}
          whole
          min={1}
          max={MOST_PIECES}
          onCommit={(pieceCount) => set({ pieceCount })}
        />
        <NumberEntry
          label="Pairs of readings of one test"
          value={testing.pairCount}
          whole
          min={1}
          max={MOST_PAIRS}
          hint="Bare cloth beside the print, on the same piece."
          onCommit={(pairCount) => set({ pairCount })}
        />
      </div>
    </fieldset>
  );
}
