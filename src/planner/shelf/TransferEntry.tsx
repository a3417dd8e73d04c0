/** How much of the mesh's ink a print takes, as long as the set-up was not weighed. */
import type { SetUp } from "../../job/shelfDocument.ts";
import { PercentEntry } from "../controls/PercentEntry.tsx";

interface Props {
  readonly setUp: SetUp;
  readonly onChange: (part: Pick<SetUp, "transferFraction">) => void;
}

export function TransferEntry({ setUp, onChange }: Props) {
  if (setUp.weighed !== null) return null;
  return (
    <PercentEntry
      label="Transfer, of the mesh's ink"
      fraction={setUp.transferFraction}
      placeholder="60"
      min={5}
      hint="Until it is weighed; empty counts as 60 %."
      onCommit={(transferFraction) => onChange({ transferFraction })}
      onClear={() => onChange({ transferFraction: null })}
    />
  );
}
