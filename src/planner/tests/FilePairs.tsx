/** Which readings of a file are bare cloth and which the print on it: proposed, and confirmed by whoever knows. */

import type { ConfirmedPair } from "../../exchange/readings/readingsOfPairs.ts";
import type { ReadSample } from "../../exchange/readings/readSample.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { labFigure } from "../words/garmentWords.ts";

interface Props {
  readonly samples: readonly ReadSample[];
  readonly pairs: readonly ConfirmedPair[];
  readonly isProposal: boolean;
  readonly from: "names" | "order";
  readonly onChange: (pairs: readonly ConfirmedPair[]) => void;
}

function sampleLabel({ name, line, lab, spectrum }: ReadSample, index: number): string {
  const called = name === "" ? `Reading ${index + 1}` : name;
  const figures = lab === null ? (spectrum === null ? "" : ", spectrum") : `, L* ${labFigure(lab.L)}`;
  return `${called}${line === null ? "" : `, line ${line}`}${figures}`;
}

export function FilePairs({ samples, pairs, isProposal, from, onChange }: Props) {
  const options = samples.map((sample, index) => ({
    value: String(index),
    label: sampleLabel(sample, index),
  }));
  const used = new Set(pairs.flatMap(({ bare, print }) => [bare, print]));
  const free = samples.flatMap((_, index) => (used.has(index) ? [] : [index]));
  const put = (at: number, part: Partial<ConfirmedPair>) =>
    onChange(pairs.map((pair, i) => (i === at ? { ...pair, ...part } : pair)));
  return (
    <fieldset className="fields-block">
      <legend>Bare cloth and print</legend>
      <p className="quiet">
        {pairs.length === 0
          ? "No pair was found by the names; say which readings belong together."
          : isProposal
            ? `${pairs.length} ${pairs.length === 1 ? "pair" : "pairs"} proposed ${from === "names" ? "from the names" : "from the order alone"}: check them.`
            : `${pairs.length} ${pairs.length === 1 ? "pair" : "pairs"}.`}
        {free.length > 0 && ` ${free.length} of ${samples.length} readings belong to none.`}
      </p>
      {pairs.map(({ bare, print }, at) => (
        <div
          className="tests__file-pair"
          // biome-ignore lint/suspicious/noArrayIndexKey: pairs have no other identity and keep no state
          key={at}
        >
          <Choice
            label={`Bare, pair ${at + 1}`}
            value={String(bare)}
            options={options}
            onChange={(value) => put(at, { bare: Number(value) })}
          />
          <Choice
            label={`Print, pair ${at + 1}`}
            value={String(print)}
            options={options}
            onChange={(value) => put(at, { print: Number(value) })}
          />
          <ActionButton onClick={() => put(at, { bare: print, print: bare })}>Swap</ActionButton>
          <ActionButton weight="plain" onClick={() => onChange(pairs.filter((_, i) => i !== at))}>
            Leave out
          </ActionButton>
        </div>
      ))}
      {free.length >= 2 && (
        <div>
          <ActionButton onClick={() => onChange([...pairs, { bare: free[0] ?? 0, print: free[1] ?? 0 }])}>
            Add a pair
          </ActionButton>
        </div>
      )}
    </fieldset>
  );
}
