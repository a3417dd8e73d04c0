/** Ways to recover, best first, the best without a screen change marked, printing on as it is last. */
import { useState } from "react";
import type { RecoverAnswer } from "../../engine/decisions/decisionProtocol.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { RecoverWay } from "./RecoverWay.tsx";

interface Props {
  readonly jobId: string;
  readonly placeId: string;
  readonly shelf: Shelf;
  /** The recipe as it is printed now. */
  readonly before: Recipe;
  readonly answer: Extract<RecoverAnswer, { readonly ok: true }>;
  readonly isApproved: boolean;
  readonly onUse: (recipe: Recipe, setUpId: string) => void;
}

/** What fits beside the press without scrolling far. Invented default. */
const SHOWN_COUNT = 5;

export function RecoverList({ jobId, placeId, shelf, before, answer, isApproved, onUse }: Props) {
  const [shownCount, setShownCount] = useState(SHOWN_COUNT);
  const { plan, recipes } = answer;
  const ways = plan.options.map((option, index) => ({ option, recipe: recipes[index], rank: index + 1 }));
  const changed = ways.filter(({ option }) => option.changes.length > 0);
  const asItIs = ways.filter(({ option }) => option.changes.length === 0);
  const best = plan.bestOnThisScreen;
  const first = changed.slice(0, shownCount);
  // The best that keeps the screen is in sight however far down it ranks: it is what can be done in minutes.
  const kept = changed.filter(({ option }) => option === best && !first.some((way) => way.option === best));
  const hidden = changed.length - first.length - kept.length;
  const shown = [...first, ...kept];
  const list = (some: typeof ways) =>
    some.map(({ option, recipe, rank }) =>
      recipe === undefined ? null : (
        <RecoverWay
          key={rank}
          jobId={jobId}
          placeId={placeId}
          shelf={shelf}
          before={before}
          option={option}
          recipe={recipe}
          rank={rank}
          isBestOnScreen={option === best}
          isApproved={isApproved}
          onUse={onUse}
        />
      ),
    );
  return (
    <>
      <p>
        {plan.sufficesOnThisScreen
          ? "A change without another screen suffices; it comes first."
          : best === null
            ? "Nothing helps without another screen."
            : "No change suffices without another screen; the best of those is marked."}{" "}
        {plan.predictedCount} ways were predicted; what helps less than printing on is left out.
      </p>
      <ol className="press__ways">{list(shown)}</ol>
      {hidden > 0 && (
        <div>
          <ActionButton onClick={() => setShownCount(shownCount + 10)}>
            Show {Math.min(hidden, 10)} more
          </ActionButton>
        </div>
      )}
      <ol className="press__ways" aria-label="Without a change">
        {list(asItIs)}
      </ol>
    </>
  );
}
