/** One way to recover: what is changed, what it is expected to be, what it takes, what it warns of, and taking it. */
import type { RecoverOption } from "../../core/planning/decisions/recover.ts";
import type { RecoverRecipe } from "../../engine/decisions/decisionProtocol.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { jobAddress, printAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { ChanceBar } from "../matrix/CellFace.tsx";
import { moneyWords } from "../words/moneyWords.ts";
import { chanceWords, changeWords, rangeWords } from "../words/predictionSentences.ts";
import {
  atThePressWords,
  distanceWords,
  optionWords,
  RECOVER_CAUTIONS,
  screenWords,
} from "../words/recoverSentences.ts";

interface Props {
  readonly jobId: string;
  readonly placeId: string;
  readonly shelf: Shelf;
  readonly before: Recipe;
  readonly option: RecoverOption;
  readonly recipe: RecoverRecipe;
  readonly rank: number;
  readonly isBestOnScreen: boolean;
  readonly isApproved: boolean;
  readonly onUse: (recipe: Recipe, setUpId: string) => void;
}

export function RecoverWay(props: Props) {
  const { shelf, before, option, recipe, rank, isBestOnScreen, isApproved } = props;
  const { prediction, changes, minutes, cost, cautions } = option;
  const { deltaL5, deltaL50, deltaL95, chanceInBand } = prediction;
  const title = optionWords(changes, before, shelf);
  return (
    <li className="press__way" value={rank} data-as-it-is={changes.length === 0 ? "" : undefined}>
      <div className="press__way-what">
        <h4>
          {changes.length > 0 && <span className="press__rank">{rank}. </span>}
          {title}
        </h4>
        <p>
          {screenWords(option)}
          {changes.length > 0 &&
            ` · ${Math.round(minutes)} min, ${moneyWords(cost, shelf.defaults.currency)}`}
          {isBestOnScreen && <strong> · best without a screen change</strong>}
        </p>
        {cautions.map((caution) => (
          <p key={caution} className="press__caution">
            ! {RECOVER_CAUTIONS[caution]}
          </p>
        ))}
      </div>
      <div className="press__way-figures">
        <p className="press__chance">
          <ChanceBar chance={chanceInBand} />
          <span>
            <span className="number">{chanceWords(chanceInBand)}</span> in band
          </span>
        </p>
        <p>
          <strong>{changeWords(deltaL50)}</strong>, {rangeWords({ deltaL: deltaL50, deltaL5, deltaL95 })}
        </p>
        <p className="press__small">{distanceWords(option, isApproved)}</p>
        <p>
          <span className="evidence" data-evidence={recipe.evidence}>
            {recipe.evidence}
          </span>
        </p>
      </div>
      {changes.length > 0 && <Take {...props} title={title} />}
    </li>
  );
}

/** Taking it, or why that needs a step elsewhere first. */
function Take({ jobId, placeId, shelf, option, recipe, onUse, title }: Props & { readonly title: string }) {
  const { setUpId } = recipe;
  if (option.changes.some(({ kind }) => kind === "halftone")) {
    const matrix = printAddress(jobAddress(jobId, "matrix", { place: placeId }));
    return (
      <p className="press__take">
        The halftone is the artwork's, for every garment of the place:{" "}
        <a href={matrix}>set it in the matrix</a>, then choose the mix there.
      </p>
    );
  }
  if (setUpId === null) {
    const setUps = printAddress(jobAddress(jobId, "shelf", { tab: "set-ups" }));
    return (
      <p className="press__take">
        At the press: {atThePressWords(option, shelf)}. The shelf has no such set-up yet:{" "}
        <a href={setUps}>put it on the shelf</a>, then it can be used here.
      </p>
    );
  }
  return (
    <div className="press__take">
      <ActionButton aria-label={`Use this: ${title}`} onClick={() => onUse(recipe.recipe, setUpId)}>
        Use this
      </ActionButton>
    </div>
  );
}
