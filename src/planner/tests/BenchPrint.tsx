/** What was printed: garment lot, mix, set-up; what was weighed and how it was cured, where that is known. */
import type { Documents } from "../../job/documents.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { Choice } from "../controls/Choice.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { ActualGrams } from "./ActualGrams.tsx";
import { chosenRecipe, lotOptions, recipeOptions } from "./benchOptions.ts";

interface Props {
  readonly form: BenchForm;
  readonly documents: Documents;
  readonly onChange: (part: Partial<BenchForm>) => void;
}

const CHOOSE = { value: "", label: "choose" } as const;

export function BenchPrint({ form, documents, onChange }: Props) {
  const { shelf } = documents.library;
  const units = shopUnits(shelf.defaults.units);
  const recipes = recipeOptions(documents, form.recipe);
  const recipe = chosenRecipe(recipes, form.recipe);
  // Read again, it is the same print: another cloth or ink would make it another one.
  const isFixed = form.readsAgainId !== null;
  return (
    <fieldset className="fields-block" disabled={isFixed}>
      <legend>What was printed</legend>
      <div className="fields">
        <Choice
          label="Garment lot"
          value={form.garmentLotId ?? ""}
          disabled={isFixed}
          options={[CHOOSE, ...lotOptions(documents)]}
          onChange={(value) => onChange({ garmentLotId: value === "" ? null : value })}
        />
        <Choice
          label="Mix"
          value={recipe?.value ?? ""}
          disabled={isFixed}
          options={[CHOOSE, ...recipes]}
          onChange={(value) =>
            onChange({
              recipe: recipes.find((one) => one.value === value)?.recipe ?? null,
              actualGrams: null,
            })
          }
        />
        <Choice
          label="Set-up"
          value={form.setUpId ?? ""}
          disabled={isFixed}
          options={[CHOOSE, ...shelf.setUps.map(({ id, name }) => ({ value: id, label: name }))]}
          onChange={(value) => onChange({ setUpId: value === "" ? null : value })}
        />
      </div>
      <details className="tests__more">
        <summary>Weighed, cured, halftone: where known</summary>
        {form.recipe !== null && !isFixed && (
          <ActualGrams
            recipe={form.recipe}
            grams={form.actualGrams}
            shelf={shelf}
            onChange={(actualGrams) => onChange({ actualGrams })}
          />
        )}
        <div className="fields">
          <MeasureEntry
            label="Ink on the inked area of this print, weighed"
            stored={form.depositGsm}
            unit={units.massPerArea}
            min={0.1}
            max={500}
            onCommit={(depositGsm) => onChange({ depositGsm })}
            onClear={() => onChange({ depositGsm: null })}
          />
          <MeasureEntry
            label="Film temperature in the dryer"
            hint="As measured; nothing is filled in but what you used last."
            stored={form.cure.filmCelsius}
            unit={units.temperature}
            min={20}
            max={300}
            onCommit={(filmCelsius) => onChange({ cure: { ...form.cure, filmCelsius } })}
            onClear={() => onChange({ cure: { ...form.cure, filmCelsius: null } })}
          />
          <NumberEntry
            label="Time in the dryer"
            unit="s"
            value={form.cure.seconds}
            min={0}
            max={3600}
            onCommit={(seconds) => onChange({ cure: { ...form.cure, seconds } })}
            onClear={() => onChange({ cure: { ...form.cure, seconds: null } })}
          />
          <PercentEntry
            label="Halftone; 100 % is solid"
            fraction={form.halftoneFraction}
            onCommit={(halftoneFraction) => onChange({ halftoneFraction })}
          />
          <Tick
            label="Smoothed or pressed afterwards"
            checked={form.smoothed}
            onChange={(smoothed) => onChange({ smoothed })}
          />
        </div>
      </details>
    </fieldset>
  );
}
