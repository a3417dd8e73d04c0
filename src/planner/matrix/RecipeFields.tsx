/** The parts of a mix: a base that takes the rest, and tints, additives and reducers in percent. */
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { percentWords } from "../words/garmentWords.ts";
import { type DraftPart, type RecipeDraft, restFraction } from "./recipeDraft.ts";

interface Props {
  readonly draft: RecipeDraft;
  readonly shelf: Shelf;
  readonly onChange: (draft: RecipeDraft) => void;
}

const PERCENT = 100;
/** What a part begins with: a tint of the shop's ladder; of an additive a tenth, or its limit. Invented. */
const FIRST_ADDITIVE_FRACTION = 0.1;

interface Item {
  readonly id: string;
  readonly name: string;
  readonly largestFraction: number;
}

export function RecipeFields({ draft, shelf, onChange }: Props) {
  const changePart = (key: number, change: Partial<DraftPart>) =>
    onChange({
      ...draft,
      parts: draft.parts.map((part) => (part.key === key ? { ...part, ...change } : part)),
    });
  const used = new Set([draft.baseId, ...draft.parts.map(({ itemId }) => itemId)]);
  const free = (items: readonly Item[]) => items.find(({ id }) => !used.has(id));
  const tint =
    shelf.colourants.find(({ optics, id }) => optics.kind === "black" && !used.has(id)) ??
    free(shelf.colourants);
  const additives = shelf.bases.filter(({ role }) => role !== "base");
  const additive = free(additives) ?? free(shelf.bases);
  const add = (item: Item, massFraction: number) => {
    const key = Math.max(-1, ...draft.parts.map((part) => part.key)) + 1;
    onChange({
      ...draft,
      parts: [
        ...draft.parts,
        { key, itemId: item.id, massFraction: Math.min(massFraction, item.largestFraction) },
      ],
    });
  };
  const isColourant = (itemId: string) => shelf.colourants.some(({ id }) => id === itemId);
  return (
    <div className="recipe">
      <div className="recipe__part">
        <Choice
          label="Base"
          value={draft.baseId}
          options={shelf.bases.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(baseId) => onChange({ ...draft, baseId })}
        />
        <p className="recipe__rest">takes the rest: {percentWords(Math.max(0, restFraction(draft)))}</p>
      </div>
      {draft.parts.map((part) => {
        const items: readonly Item[] = isColourant(part.itemId) ? shelf.colourants : shelf.bases;
        const item = items.find(({ id }) => id === part.itemId);
        return (
          <div className="recipe__part" key={part.key}>
            <Choice
              label={isColourant(part.itemId) ? "Tint" : "Additive or reducer"}
              value={part.itemId}
              options={[
                ...(item === undefined ? [{ value: part.itemId, label: "no longer on the shelf" }] : []),
                ...items.map(({ id, name }) => ({ value: id, label: name })),
              ]}
              onChange={(itemId) => changePart(part.key, { itemId })}
            />
            <NumberEntry
              label={`Part of ${item?.name ?? "the mix"}`}
              labelUnseen
              value={Number((part.massFraction * PERCENT).toFixed(7))}
              min={0}
              max={PERCENT}
              unit="%"
              onCommit={(percent) =>
                changePart(part.key, { massFraction: Number((percent / PERCENT).toFixed(9)) })
              }
            />
            <ActionButton
              aria-label={`Take ${item?.name ?? "it"} out`}
              onClick={() => onChange({ ...draft, parts: draft.parts.filter(({ key }) => key !== part.key) })}
            >
              Take out
            </ActionButton>
          </div>
        );
      })}
      <div className="recipe__more">
        {tint !== undefined && (
          <ActionButton
            onClick={() => add(tint, shelf.defaults.tintLadder.find((step) => step > 0) ?? 0.001)}
          >
            Add a tint
          </ActionButton>
        )}
        {additive !== undefined && (
          <ActionButton onClick={() => add(additive, FIRST_ADDITIVE_FRACTION)}>
            Add an additive or reducer
          </ActionButton>
        )}
      </div>
    </div>
  );
}
