/** How a batch is wished to be weighed: on which scale, into which pots, how much, each tint in which form. */
import type { InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { amountWords } from "../words/inkFigures.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

const GRAMS_PER_KG = 1000;
/** Less is no batch, more is no ink room's. Invented. */
const AMOUNT_KG = { min: 0.01, max: 1000 };

export function WeighWishes({ batch, ink }: { readonly batch: InkBatch; readonly ink: InkRoomInUse }) {
  const { shelf, units, wishes, wish } = ink;
  const { scales, potSizes } = shelf.defaults;
  const own = wishes[batch.mixId] ?? {};
  return (
    <>
      {batch.scale !== null && (
        <Choice
          label="Scale"
          value={batch.scale.id}
          options={scales.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(scaleId) => wish(batch.mixId, { scaleId })}
        />
      )}
      {batch.pots !== null && (
        <Choice
          label="Pot"
          value={batch.pots.size.id}
          options={potSizes.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(potSizeId) => wish(batch.mixId, { potSizeId })}
        />
      )}
      <MeasureEntry
        label="Amount to mix"
        stored={batch.batchGrams / GRAMS_PER_KG}
        unit={shopUnits(units).potMass}
        {...AMOUNT_KG}
        hint={`The prints ask for ${amountWords(batch.size.batchGrams, units)}.`}
        onCommit={(kg) => wish(batch.mixId, { batchGrams: kg * GRAMS_PER_KG })}
      />
      {own.batchGrams !== undefined && (
        <ActionButton onClick={() => wish(batch.mixId, { batchGrams: undefined })}>
          Mix what the prints ask for
        </ActionButton>
      )}
      <FormChoices batch={batch} ink={ink} />
    </>
  );
}

const BY_RULE = "by-rule";

function FormChoices({ batch, ink }: { readonly batch: InkBatch; readonly ink: InkRoomInUse }) {
  const chosen = ink.wishes[batch.mixId]?.weighAs ?? {};
  return batch.recipe
    .filter(({ role, massFraction }) => role === "colourant" && massFraction > 0)
    .map(({ itemId, name }) => {
      const masters = ink.room.masters.filter(
        ({ master, state }) => master.colourantId === itemId && state !== "expired",
      );
      return (
        <Choice
          key={itemId}
          label={`Weigh ${name} as`}
          value={chosen[itemId] ?? BY_RULE}
          options={[
            { value: BY_RULE, label: "the 50-step rule says" },
            { value: "neat", label: "neat" },
            ...masters.map(({ master, name: masterName }) => ({ value: master.id, label: masterName })),
          ]}
          onChange={(form) => {
            const { [itemId]: _before, ...others } = chosen;
            ink.wish(batch.mixId, { weighAs: form === BY_RULE ? others : { ...others, [itemId]: form } });
          }}
        />
      );
    });
}
