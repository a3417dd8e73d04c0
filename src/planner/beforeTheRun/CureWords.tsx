/** The cure of each part of a mix, exactly as the shop entered it from the ink maker's data sheet; nothing is filled in. */
import { recipeItem } from "../../job/lookup.ts";
import type { Mix } from "../../job/mixDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { format } from "../../units/unit.ts";

export function CureWords({ mix, shelf }: { readonly mix: Mix; readonly shelf: Shelf }) {
  const { temperature } = shopUnits(shelf.defaults.units);
  const parts = mix.recipe.flatMap(({ itemId, massFraction }) => {
    const item = massFraction > 0 ? recipeItem(shelf, itemId)?.item : undefined;
    return item === undefined ? [] : [item];
  });
  return (
    <dl className="run__cures">
      {parts.map(({ id, name, cure }) => {
        const figures = [
          cure.filmCelsius === null ? null : `film ${format(cure.filmCelsius, temperature)}`,
          cure.seconds === null ? null : `${cure.seconds} s`,
        ].filter((figure) => figure !== null);
        return (
          <div key={id}>
            <dt>{name}</dt>
            <dd>
              {figures.length === 0 ? "not entered" : `${figures.join(", ")} (as entered on the shelf)`}
              {cure.note !== "" && <span className="quiet"> {cure.note}</span>}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
