/** Ways to recover, best first, the best without a screen change marked, printing on as it is last. */
import { useState } from "react";
import type { RecoverAnswer } from "../../engine/decisions/decisionProtocol.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { recoverSummary } from "../words/recoverSentences.ts";
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
const MORE_COUNT = 10;

export function RecoverList({ jobId, placeId, shelf, before, answer, isApproved, onUse }: Props) {
  const [shownCount, setShownCount] = useState(SHOWN_COUNT);
  // The button that shows the last of them goes.
  const firstNew = `:scope > :nth-child(${shownCount - MORE_COUNT + 1}) button`;
  const list = useLostFocus<HTMLOListElement>(firstNew, String(shownCount));
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
  const rows = (some: typeof ways) =>
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
        {recoverSummary(plan)} {plan.predictedCount} ways were predicted; what helps less than printing on is
        left out. Chances within 5 points count as equal: then the nearest to the approved print comes first,
        then minutes and money.
      </p>
      <ol className="press__ways" ref={list}>
        {rows(shown)}
      </ol>
      {hidden > 0 && (
        <div>
          <ActionButton onClick={() => setShownCount(shownCount + MORE_COUNT)}>
            Show {Math.min(hidden, MORE_COUNT)} more
          </ActionButton>
        </div>
      )}
      <ol className="press__ways" aria-label="Without a change">
        {rows(asItIs)}
      </ol>
    </>
  );
}
