/** The checklist as one table: a row for each garment at each place, a column for each item. It is also the page that is printed. */
import { Fragment, type KeyboardEvent, useRef } from "react";
import type { ChecklistReasonCode } from "../../core/planning/checklistItem.ts";
import type { Documents } from "../../job/documents.ts";
import { pieceCount } from "../../job/lookup.ts";
import { CELSIUS } from "../../units/unit.ts";
import { jobAddress, printAddress } from "../address.ts";
import { dayWords, ITEM_CODES, itemName, reasonSentence } from "../words/checklistSentences.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { pieces } from "../words/pieceWords.ts";
import { changeWords, rangeWords } from "../words/predictionSentences.ts";
import type { ShownVerdict } from "../words/verdictSentences.ts";
import { LotChangeRow, VerdictOnPaper, VerdictWords } from "./RunRowWords.tsx";
import type { ItemState, RunLine } from "./runLines.ts";
import { itemCellWords, standingWords } from "./standingWords.ts";

interface Props {
  readonly documents: Documents;
  readonly lines: readonly RunLine[];
  /** By key; a line whose verdict cannot be told yet has none. */
  readonly verdicts: ReadonlyMap<string, ShownVerdict>;
  readonly openKey: string | null;
  /** The number of each reason in the legend. */
  readonly legend: ReadonlyMap<ChecklistReasonCode, number>;
  /** Initials by signer. */
  readonly signers: ReadonlyMap<string, string>;
  readonly onOpen: (line: RunLine) => void;
}

const NEXT: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowDown: (index, count) => Math.min(index + 1, count - 1),
  ArrowUp: (index) => Math.max(index - 1, 0),
  Home: () => 0,
  End: (_index, count) => count - 1,
};

export function RunTable({ documents, lines, verdicts, openKey, legend, signers, onOpen }: Props) {
  const jobId = documents.job.id;
  const { currency } = documents.library.shelf.defaults;
  const body = useRef<HTMLTableSectionElement>(null);
  const columns = ITEM_CODES.filter((code) =>
    lines.some(({ items }) => items.some(({ item }) => item.code === code)),
  );
  const reachable = lines.some(({ key }) => key === openKey) ? openKey : lines[0]?.key;

  function onKeyDown(event: KeyboardEvent): void {
    const buttons = [...(body.current?.querySelectorAll<HTMLButtonElement>("[data-row-button]") ?? [])];
    const index = buttons.indexOf(event.target as HTMLButtonElement);
    const next = NEXT[event.key];
    if (index < 0 || next === undefined) return;
    event.preventDefault();
    buttons[next(index, buttons.length)]?.focus();
  }

  return (
    <table className="run__table">
      <caption className="unseen">What has to be true before each run</caption>
      <thead>
        <tr>
          <th scope="col">Garment</th>
          <th scope="col">Print</th>
          {columns.length === 0 && <th scope="col">Before the run</th>}
          {columns.map((code) => (
            <th scope="col" key={code} className="run__item">
              {itemName(code)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody ref={body} onKeyDown={onKeyDown}>
        {lines.map((run) => (
          <Fragment key={run.key}>
            <tr data-open={run.key === openKey ? "" : undefined} data-standing={run.standing}>
              <th scope="row">
                <button
                  type="button"
                  className="run__open"
                  data-row-button=""
                  data-run={run.key}
                  aria-label={`${run.name}, ${run.place.name}`}
                  aria-expanded={run.key === openKey}
                  tabIndex={run.key === reachable ? 0 : -1}
                  onClick={() => onOpen(run)}
                >
                  {run.name}
                </button>
                <p className="run__small run__lot">
                  {run.lot !== null && run.lot.lot !== "" && <>lot {run.lot.lot} · </>}
                  {pieces(pieceCount(run.line))}{" "}
                </p>
                <p className="run__standing">{standingWords(run)}</p>
                {run.standing !== "released" && (
                  <VerdictOnPaper verdict={verdicts.get(run.key)} currency={currency} />
                )}
              </th>
              <td>
                <PrintWords run={run} />
                <VerdictWords verdict={verdicts.get(run.key)} currency={currency} />
              </td>
              {run.items.some(({ item }) => item.kind === "choice") ? (
                <td className="run__choose" colSpan={Math.max(columns.length, 1)}>
                  <ChooseMix jobId={jobId} run={run} />
                </td>
              ) : (
                columns.map((code) => (
                  <ItemCell
                    key={code}
                    name={itemName(code)}
                    state={run.items.find(({ item }) => item.code === code)}
                    legend={legend}
                    signers={signers}
                  />
                ))
              )}
            </tr>
            <LotChangeRow documents={documents} run={run} columnCount={2 + Math.max(columns.length, 1)} />
            {run.entries.overrides.map((override) => (
              <tr key={override.id} className="run__override">
                <td colSpan={2 + Math.max(columns.length, 1)}>
                  <strong>! override</strong> of {run.name}, {run.place.name}, by {override.signer},{" "}
                  {dayWords(override.at)}
                  {run.entries.override !== override && " (no longer in force)"}: {override.note}
                </td>
              </tr>
            ))}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function PrintWords({ run }: { readonly run: RunLine }) {
  const { chosen, place, mixName, setUpName } = run;
  return (
    <>
      <p>
        <strong>{place.name}</strong>
        {mixName !== "" && <>, {mixName}</>}
      </p>
      {setUpName !== "" && <p className="run__small">{setUpName}</p>}
      {chosen.kind === "predicted" && (
        <p className="run__small">
          {changeWords(chosen.cell.deltaL)}, {rangeWords(chosen.cell)},{" "}
          <span className="run__evidence" data-evidence={chosen.cell.evidence}>
            {chosen.cell.evidence}
          </span>
        </p>
      )}
    </>
  );
}

export function ChooseMix({ jobId, run }: { readonly jobId: string; readonly run: RunLine }) {
  const { line, place, chosen } = run;
  const matrix = printAddress(jobAddress(jobId, "matrix", { line: line.id, place: place.id }));
  const reasons = run.items.flatMap(({ item }) => item.reasons);
  return (
    <>
      {reasons.map((reason) => (
        <p key={reason.code}>{reasonSentence(reason, CELSIUS)}</p>
      ))}
      {chosen.kind === "refused" && <ProblemList problems={chosen.problems} />}
      <p data-print="hide">
        <a href={matrix} aria-label={`Choose in the matrix for ${run.name}, ${place.name}`}>
          Choose in the matrix
        </a>
      </p>
    </>
  );
}

interface CellProps {
  readonly name: string;
  readonly state: ItemState | undefined;
  readonly legend: Props["legend"];
  readonly signers: Props["signers"];
}

function ItemCell({ name, state, legend, signers }: CellProps) {
  if (state === undefined) {
    return (
      <td className="run__item" data-state="none">
        <span aria-hidden="true">–</span>
        <span className="unseen">not asked</span>
      </td>
    );
  }
  const numbers = state.item.reasons
    .map(({ code }) => legend.get(code))
    .filter((number) => number !== undefined);
  return (
    <td className="run__item" data-state={state.state} data-label={name}>
      <span className="run__mark" data-blocking={state.item.blocking ? "" : undefined} aria-hidden="true" />
      <span className="run__word" data-blocking={state.item.blocking ? "" : undefined}>
        {itemCellWords(state)}
      </span>
      {state.state === "signed" && state.entry !== null && (
        <span className="run__by">
          {signers.get(state.entry.signer)}, {dayWords(state.entry.at)}
        </span>
      )}
      <span className="run__why" data-paper="">
        {numbers.join(" ")}
      </span>
    </td>
  );
}
