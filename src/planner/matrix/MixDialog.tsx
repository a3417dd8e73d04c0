/** A mix written or changed: recipe, set-up, name; nothing above a data sheet's limit is taken over. */
import { useState } from "react";
import type { Mix } from "../../job/mixDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { Dialog } from "../controls/Dialog.tsx";
import { Notice } from "../controls/Notice.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { isNamedByRecipe, recipeName } from "../words/mixWords.ts";
import { RecipeFields } from "./RecipeFields.tsx";
import { draftFromRecipe, draftSentences, recipeFromDraft } from "./recipeDraft.ts";

export interface WrittenMix {
  readonly name: string;
  readonly recipe: Mix["recipe"];
  readonly setUpId: string;
  readonly clothCoverFraction: Mix["clothCoverFraction"];
}

export interface ColumnActions {
  readonly onMoveLeft: (() => void) | null;
  readonly onMoveRight: (() => void) | null;
  readonly onDuplicate: () => void;
  readonly onRemove: () => void;
}

interface Props {
  readonly shelf: Shelf;
  /** The mix and set-up to begin with; null for a new mix. */
  readonly mix: Mix | null;
  readonly setUpId: string | null;
  readonly actions: ColumnActions | null;
  readonly onTake: (written: WrittenMix) => void;
  readonly onClose: () => void;
}

export function MixDialog({ shelf, mix, setUpId, actions, onTake, onClose }: Props) {
  const [draft, setDraft] = useState(() =>
    mix === null ? { baseId: shelf.bases[0]?.id ?? "", parts: [] } : draftFromRecipe(mix.recipe, shelf),
  );
  const [setUp, setSetUp] = useState(setUpId ?? shelf.setUps[0]?.id ?? "");
  const [ownName, setOwnName] = useState(mix !== null && !isNamedByRecipe(mix, shelf) ? mix.name : "");
  const [cover, setCover] = useState(mix?.clothCoverFraction ?? null);
  const [isAsked, setIsAsked] = useState(false);
  const sentences = [
    ...draftSentences(draft, shelf),
    ...(setUp === "" ? ["There is no set-up on the shelf yet: add one there first."] : []),
  ];
  const recipe = recipeFromDraft(draft);
  const hasWhite = recipe.some(
    ({ itemId, massFraction }) =>
      massFraction > 0 && shelf.colourants.some(({ id, optics }) => id === itemId && optics.kind === "white"),
  );
  const suggested = sentences.length === 0 ? recipeName(recipe, shelf) : "";
  const take = () => {
    setIsAsked(true);
    if (sentences.length > 0) return;
    onTake({
      name: ownName === "" ? suggested : ownName,
      recipe,
      setUpId: setUp,
      clothCoverFraction: hasWhite ? cover : null,
    });
  };
  return (
    <Dialog
      title={mix === null ? "Add a mix" : "Change the mix"}
      onClose={onClose}
      actions={
        <>
          <ActionButton onClick={onClose}>Cancel</ActionButton>
          <ActionButton weight="strong" onClick={take}>
            {mix === null ? "Add mix" : "Take over"}
          </ActionButton>
        </>
      }
    >
      <RecipeFields draft={draft} shelf={shelf} onChange={setDraft} />
      {hasWhite && (
        <PercentEntry
          label="Part of the cloth that the white covers"
          fraction={cover}
          placeholder="the model's default"
          hint="Read it off a test print: a thin white lets fibres through. Left empty, it follows the white content."
          onCommit={setCover}
          onClear={() => setCover(null)}
        />
      )}
      <Choice
        label="Set-up"
        value={setUp}
        options={shelf.setUps.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={setSetUp}
      />
      <TextEntry
        label="Name"
        value={ownName}
        placeholder={suggested}
        hint="Left empty, the recipe names it."
        maxLength={120}
        onCommit={setOwnName}
      />
      {actions !== null && (
        <fieldset className="recipe__more">
          <legend className="entry__label">This column</legend>
          <ActionButton disabled={actions.onMoveLeft === null} onClick={actions.onMoveLeft ?? undefined}>
            Move left
          </ActionButton>
          <ActionButton disabled={actions.onMoveRight === null} onClick={actions.onMoveRight ?? undefined}>
            Move right
          </ActionButton>
          <ActionButton onClick={actions.onDuplicate}>Duplicate</ActionButton>
          <ActionButton onClick={actions.onRemove}>Remove</ActionButton>
        </fieldset>
      )}
      {sentences.length > 0 && (
        <Notice kind="problem" announce={isAsked}>
          {sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
      )}
    </Dialog>
  );
}
