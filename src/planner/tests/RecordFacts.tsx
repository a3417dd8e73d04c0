/** Everything that a record says, figure by figure, as it was entered. */

import type { Library } from "../../job/libraryDocument.ts";
import { recipeItem } from "../../job/lookup.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { format } from "../../units/unit.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { GEOMETRIES, labFigure, percentWords } from "../words/garmentWords.ts";
import { readingsWords } from "../words/testsWords.ts";

interface Props {
  readonly print: TestPrint;
  readonly library: Library;
}

export function RecordFacts({ print, library }: Props) {
  const { shelf } = library;
  const units = shopUnits(shelf.defaults.units);
  const itemName = (itemId: string) =>
    recipeItem(shelf, itemId)?.item.name ?? "an ink no longer on the shelf";
  const { readings, cure } = print;
  const facts: (readonly [string, string])[] = [
    ["Printed", timeWords(print.printedAt)],
    ["Read", `${timeWords(print.readAt)}${print.operator === "" ? "" : `, ${print.operator}`}`],
    ["Readings", readingsWords(readings)],
  ];
  if (readings.kind !== "by-eye") {
    const geometry = GEOMETRIES.find(({ value }) => value === readings.geometry)?.label ?? readings.geometry;
    facts.push(["Geometry", geometry]);
    facts.push(["Garments", String(readings.pieceCount)]);
  }
  if (print.instrument !== "") facts.push(["Instrument", print.instrument]);
  if (print.backing !== "") facts.push(["Backing", print.backing]);
  if (print.actualGrams !== null) {
    const poured = print.actualGrams.map(
      ({ itemId, grams }) => `${format(grams, units.mass)} ${itemName(itemId)}`,
    );
    facts.push(["Poured", poured.join(", ")]);
  }
  if (print.depositGsm !== null) facts.push(["Weighed deposit", format(print.depositGsm, units.massPerArea)]);
  if (cure.filmCelsius !== null) {
    const time = cure.seconds === null ? "" : `, ${cure.seconds}\u00a0s`;
    facts.push(["Cure, as entered", `${format(cure.filmCelsius, units.temperature)}${time}`]);
  }
  if (print.halftoneFraction < 1) facts.push(["Halftone", percentWords(print.halftoneFraction)]);
  if (print.smoothed) facts.push(["Smoothed", "yes"]);
  if (print.note !== "") facts.push(["Note", print.note]);
  return (
    <>
      <dl className="tests__facts">
        {facts.map(([term, value]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {readings.kind === "lab" && (
        <details className="tests__more">
          <summary>
            {readings.pairs.length === 1 ? "The pair as read" : `${readings.pairs.length} pairs as read`}
          </summary>
          <table className="tests__table tests__table--figures">
            <thead>
              <tr>
                <th scope="col">Pair</th>
                <th scope="col">Bare L*, a*, b*</th>
                <th scope="col">Print L*, a*, b*</th>
              </tr>
            </thead>
            <tbody>
              {readings.pairs.map(({ bare, print: inked }, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a record's pairs never change
                <tr key={index}>
                  <th scope="row">{index + 1}</th>
                  {[bare, inked].map(({ L, a, b }, side) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: bare and print
                    <td key={side}>
                      {labFigure(L)}, {labFigure(a)}, {labFigure(b)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
      {print.photo !== null && (
        <figure className="tests__photo">
          <img src={print.photo.dataUrl} alt={`The print, as photographed: ${print.photo.name}`} />
          <figcaption>{print.photo.name}, not for measurement</figcaption>
        </figure>
      )}
    </>
  );
}
