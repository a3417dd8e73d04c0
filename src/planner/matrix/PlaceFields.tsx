/** What a print place is: its name, the size of the print, how much of it carries ink. */
import type { Place } from "../../job/jobDocument.ts";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";

export type PlaceSize = Pick<Place, "name" | "widthMm" | "heightMm" | "coverFraction">;

/** Smaller is a dot, larger no garment has. Invented; the schema allows up to 2000 mm. */
const SIZE_MM = { min: 5, max: 2000 };

interface Props {
  readonly place: PlaceSize;
  readonly units: UnitChoice;
  readonly onChange: (change: Partial<PlaceSize>) => void;
}

export function PlaceFields({ place, units, onChange }: Props) {
  const { length } = shopUnits(units);
  return (
    <>
      <TextEntry
        label="Print place"
        value={place.name}
        maxLength={120}
        required="A print place needs a name, as Front."
        suggestions={["Front", "Back", "Left chest", "Sleeve"]}
        onCommit={(name) => onChange({ name })}
      />
      <MeasureEntry
        label="Print width"
        stored={place.widthMm}
        unit={length}
        {...SIZE_MM}
        onCommit={(widthMm) => onChange({ widthMm })}
      />
      <MeasureEntry
        label="Print height"
        stored={place.heightMm}
        unit={length}
        {...SIZE_MM}
        onCommit={(heightMm) => onChange({ heightMm })}
      />
      <PercentEntry
        label="Part that carries ink"
        fraction={place.coverFraction}
        onCommit={(coverFraction) => onChange({ coverFraction })}
      />
    </>
  );
}
