/** How the ink room works: its scales and pots, what keeps a screen wet, what is spoiled, what a change on press takes. */
import type { SpoilageRule } from "../../core/planning/ink/spoilage.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import type { ShopUnits } from "../../units/shopUnits.ts";
import { Choice } from "../controls/Choice.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { SPOILAGE_RULES } from "../words/inkRoomWords.ts";
import { PotSizes } from "./PotSizes.tsx";
import { Scales } from "./Scales.tsx";

interface Props {
  readonly defaults: ShopDefaults;
  readonly units: ShopUnits;
  readonly onChange: (change: Partial<ShopDefaults>) => void;
}

/** What the shop's own rule starts with where another was in use. Invented, as in an empty library. */
const FIRST_FRACTION = 0.02;
const SCREEN_WET_GRAMS = { min: 0, max: 100_000 };
const MOST_MINUTES = 1440;

const CHANGES: readonly { readonly key: keyof ShopDefaults["changeMinutes"]; readonly label: string }[] = [
  { key: "wipe", label: "Wipe out, same base" },
  { key: "washUp", label: "Wash up" },
  { key: "lowCureCleaning", label: "More between low-cure and other ink" },
  { key: "darkToLight", label: "More from dark to light" },
  { key: "screenSetUp", label: "Another screen" },
];

function ruleOf(code: SpoilageRule["code"]): SpoilageRule {
  return code === "shop" ? { code, fraction: FIRST_FRACTION } : { code };
}

export function InkRoomDefaults({ defaults, units, onChange }: Props) {
  const { spoilageRule, screenWetGrams, changeMinutes } = defaults;
  return (
    <>
      <Scales scales={defaults.scales} mass={units.mass} onChange={(scales) => onChange({ scales })} />
      <PotSizes
        sizes={defaults.potSizes}
        volume={units.potVolume}
        onChange={(potSizes) => onChange({ potSizes })}
      />
      <fieldset className="fields-block">
        <legend>Batches</legend>
        <div className="fields">
          <MeasureEntry
            label="Keeps one screen wet"
            stored={screenWetGrams}
            unit={units.mass}
            {...SCREEN_WET_GRAMS}
            onCommit={(grams) => onChange({ screenWetGrams: grams })}
          />
          <Choice
            label="Spoilage is counted as"
            value={spoilageRule.code}
            options={SPOILAGE_RULES}
            onChange={(code) => onChange({ spoilageRule: ruleOf(code) })}
          />
          {spoilageRule.code === "shop" && (
            <PercentEntry
              label="Spoilage"
              fraction={spoilageRule.fraction}
              onCommit={(fraction) => onChange({ spoilageRule: { code: "shop", fraction } })}
            />
          )}
        </div>
      </fieldset>
      <fieldset className="fields-block">
        <legend>Changes on press</legend>
        <div className="fields">
          {CHANGES.map(({ key, label }) => (
            <NumberEntry
              key={key}
              label={label}
              value={changeMinutes[key]}
              unit="min"
              min={0}
              max={MOST_MINUTES}
              onCommit={(minutes) => onChange({ changeMinutes: { ...changeMinutes, [key]: minutes } })}
            />
          ))}
        </div>
      </fieldset>
    </>
  );
}
