/** A proposal mix by mix: the garments on each, what they have now, chance, money, and their own button. */
import { useRef } from "react";
import type { Documents } from "../../job/documents.ts";
import type { MixRules, Place } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { listed } from "../words/listed.ts";
import { counted, savedWords } from "../words/mixSearchSentences.ts";
import { moneyWords } from "../words/moneyWords.ts";
import { chanceWords } from "../words/predictionSentences.ts";
import { MixFateButtons } from "./MixFateButtons.tsx";
import { type PrintNow, printNames } from "./printNames.ts";
import type { ProposedMix, ProposedPrint } from "./proposalOutline.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly mixes: readonly ProposedMix[];
  readonly nameOf: (key: string) => string;
  readonly onRules: (change: (rules: MixRules) => MixRules) => void;
  /** Null while the proposal may not be used. */
  readonly onUse: ((print: ProposedPrint) => void) | null;
}

export function ProposedMixes({ documents, place, mixes, nameOf, onRules, onUse }: Props) {
  const { currency } = documents.library.shelf.defaults;
  const names = printNames(documents, place, nameOf);
  const hasSavings = mixes.some(({ prints }) => prints.some(({ saved }) => saved !== null));
  const columnCount = hasSavings ? 7 : 6;
  const inMoney = (words: string) => (currency === "" ? words : `${words}, ${currency}`);
  return (
    <table className="proposal__mixes">
      <caption className="unseen">Mixes proposed and the garments on each</caption>
      <thead>
        <tr>
          <th scope="col">Garment</th>
          <th scope="col">Set-up</th>
          <th scope="col">In band</th>
          <th scope="col">{inMoney("Expected loss")}</th>
          <th scope="col">{inMoney("Ink")}</th>
          {hasSavings && <th scope="col">{inMoney("Saved")}</th>}
          <td />
        </tr>
      </thead>
      {mixes.map(({ key, mix, prints, unchangedLineIds }) => (
        <tbody key={key}>
          <tr className="proposal__mix">
            <th scope="rowgroup" colSpan={columnCount}>
              <span className="proposal__mix-name">{nameOf(key)}</span>
              <span className="quiet">
                {mix !== null && mix.jobMixId === null && "new, "}
                {counted(prints.length + unchangedLineIds.length, "garment")}
                {mix !== null && `, ${moneyWords(mix.openingCost, currency)} to make`}
              </span>
              <MixFateButtons mixKey={key} name={nameOf(key)} rules={place.mixRules} onRules={onRules} />
            </th>
          </tr>
          {prints.map((print) => (
            <PrintRow
              key={print.garmentId}
              print={print}
              garment={names.garment(print.garmentId)}
              setUp={names.setUp(print.to.setUpId)}
              now={names.now(print)}
              currency={currency}
              hasSavings={hasSavings}
              onUse={onUse}
            />
          ))}
          {unchangedLineIds.length > 0 && (
            <tr className="proposal__unchanged">
              <td colSpan={columnCount}>
                {unchangedLineIds.length} unchanged: {listed(unchangedLineIds.map(names.garment))}
              </td>
            </tr>
          )}
        </tbody>
      ))}
    </table>
  );
}

interface RowProps {
  readonly print: ProposedPrint;
  readonly garment: string;
  readonly setUp: string;
  readonly now: PrintNow;
  readonly currency: string;
  readonly hasSavings: boolean;
  readonly onUse: Props["onUse"];
}

function PrintRow({ print, garment, setUp, now, currency, hasSavings, onUse }: RowProps) {
  const head = useRef<HTMLTableCellElement>(null);
  const { from, to, saved } = print;
  // On a narrow screen, where no head names it.
  const unit = currency === "" ? {} : { "data-unit": currency };
  const before = (words: string) => <small className="quiet">now {words}</small>;
  return (
    <tr>
      <th scope="row" ref={head} tabIndex={-1}>
        {garment}
        <small className="quiet">{now.words}</small>
        {now.isApproved && <small>! The customer approved what is chosen now.</small>}
      </th>
      <td data-label="Set-up">{setUp}</td>
      <td data-label="In band">
        <strong>{chanceWords(to.chanceInBand)}</strong>
        {from !== null && !now.isInUse && before(chanceWords(from.chanceInBand))}
      </td>
      <td data-label="Expected loss">
        <strong {...unit}>{moneyWords(to.expectedLoss, "")}</strong>
        {from !== null && !now.isInUse && before(moneyWords(from.expectedLoss, ""))}
      </td>
      <td data-label="Ink">
        <span {...unit}>{moneyWords(to.inkCost, "")}</span>
      </td>
      {hasSavings && (
        <td data-label="Saved" data-none={saved === null ? "" : undefined}>
          {saved === null ? "\u2013" : <span {...unit}>{savedWords(saved)}</span>}
        </td>
      )}
      <td className="proposal__use">
        {now.isInUse
          ? "in use"
          : onUse !== null && (
              <ActionButton
                onClick={() => {
                  onUse(print);
                  // The button goes with its use; the garment's name says what became of it.
                  head.current?.focus({ preventScroll: true });
                }}
              >
                Use <span className="unseen">this for {garment}</span>
              </ActionButton>
            )}
      </td>
    </tr>
  );
}
