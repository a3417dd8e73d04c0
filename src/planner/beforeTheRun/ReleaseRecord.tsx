/** The record of a release: who, when, what for, what was said of it then, and what is known of the same print today. */
import type { Documents } from "../../job/documents.ts";
import { chosenCandidate, mixOf, pieceCount } from "../../job/lookup.ts";
import { itemName, timeWords } from "../words/checklistSentences.ts";
import { listed } from "../words/listed.ts";
import { recipeName } from "../words/mixWords.ts";
import { pieces } from "../words/pieceWords.ts";
import { chanceWords, changeWords, rangeWords } from "../words/predictionSentences.ts";
import { expectedMoney } from "../words/worthSentences.ts";
import type { RunLine } from "./runLines.ts";
import { saidNow } from "./saidNow.ts";

type Said = NonNullable<ReturnType<typeof saidNow>>;

interface Props {
  readonly documents: Documents;
  readonly run: RunLine;
}

const FIGURES: readonly {
  readonly name: string;
  readonly words: (said: Said, currency: string) => string;
}[] = [
  {
    name: "Prediction",
    words: ({ deltaL, p5, p95 }) =>
      `${changeWords(deltaL)}, ${rangeWords({ deltaL, deltaL5: p5, deltaL95: p95 })} in nine of ten`,
  },
  { name: "Chance in band", words: ({ chanceInBand }) => chanceWords(chanceInBand) },
  { name: "Evidence", words: ({ evidence }) => evidence },
  {
    name: "Expected loss",
    words: ({ expectedLoss }, currency) =>
      expectedLoss === null ? "not counted" : expectedMoney(expectedLoss, currency),
  },
  { name: "Model version", words: ({ modelVersion }) => modelVersion },
];

/** Nothing where the line is not released. */
export function ReleaseRecord({ documents, run }: Props) {
  const release = run.entries.standing;
  if (run.standing !== "released" || release === null) return null;
  const { job, library } = documents;
  const { currency } = library.shelf.defaults;
  const candidate = chosenCandidate(job, run.line.id, run.place.id);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  const recipe = mix === null ? "" : recipeName(mix.recipe, library.shelf);
  const then = release.said;
  const today = saidNow(documents, run, "release");
  const signed = run.items.flatMap(({ item, state, entry }) =>
    state === "signed" && entry !== null
      ? [`${itemName(item.code).toLowerCase()} by ${entry.signer}, ${timeWords(entry.at)}`]
      : [],
  );
  return (
    <section className="run__record" aria-label={`Release record of ${run.name}, ${run.place.name}`}>
      <h4>
        {run.name}
        {run.lot !== null && run.lot.lot !== "" && `, lot ${run.lot.lot}`}, {run.place.name.toLowerCase()}
      </h4>
      <p>
        Released by <strong>{release.signer}</strong>, {timeWords(release.at)}: {pieces(pieceCount(run.line))}
        , {run.mixName}
        {recipe !== run.mixName && ` (${recipe})`}, {run.setUpName}.
      </p>
      {run.entries.overrides.map((override) => (
        <p key={override.id}>
          ! Override by {override.signer}, {timeWords(override.at)}
          {run.entries.override === override ? "" : " (no longer in force)"}: {override.note}
        </p>
      ))}
      {signed.length > 0 && <p className="quiet">Signed: {listed(signed)}.</p>}
      <table className="run__then">
        <thead>
          <tr>
            <td />
            <th scope="col">Said at the release</th>
            <th scope="col">Known today</th>
          </tr>
        </thead>
        <tbody>
          {FIGURES.map(({ name, words }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{then === null ? "nothing" : words(then, currency)}</td>
              <td>{today === null ? "not predicted" : words(today, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
