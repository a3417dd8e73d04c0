/** One page of paper for one weighing: big figures in weighing order, room for what the scale shows, a place to sign. */
import type { ReactNode } from "react";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { scaleUnit, scaleWords } from "../words/inkFigures.ts";

export interface SheetPageLine {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
  /** In the pot; null while it was not weighed. */
  readonly poured: number | null;
}

interface Props {
  readonly title: string;
  readonly part: string;
  readonly facts: readonly string[];
  readonly lines: readonly SheetPageLine[];
  readonly stepGrams: number;
  readonly units: UnitChoice;
  readonly notes: readonly string[];
  /** Below the place to sign. */
  readonly children?: ReactNode;
}

const sumOf = (grams: readonly number[]) => grams.reduce((sum, value) => sum + value, 0);

export function SheetPage({ title, part, facts, lines, stepGrams, units, notes, children }: Props) {
  const weigh = (grams: number) => scaleWords(grams, stepGrams, units);
  const poured = lines.map((line) => line.poured).filter((grams) => grams !== null);
  const isWeighed = poured.length === lines.length && lines.length > 0;
  const pencil = scaleUnit(stepGrams, units).symbol;
  return (
    <section className="ink-paper__page">
      <h2>
        {title} <span>{part}</span>
      </h2>
      {facts.map((fact) => (
        <p key={fact}>{fact}</p>
      ))}
      <table className="ink-paper__lines">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Order</span>
            </th>
            <th scope="col">Weigh in, in this order</th>
            <th scope="col">Amount</th>
            <th scope="col">{poured.length > 0 ? "In the pot" : "On the scale"}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, index) => (
            <tr key={line.id}>
              <td>{index + 1}</td>
              <th scope="row">{line.name}</th>
              <td className="ink-paper__grams">{weigh(line.grams)}</td>
              <td className="ink-paper__blank">{line.poured === null ? pencil : weigh(line.poured)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td />
            <th scope="row">In all</th>
            <td className="ink-paper__grams">{weigh(sumOf(lines.map(({ grams }) => grams)))}</td>
            <td className="ink-paper__blank">{isWeighed ? weigh(sumOf(poured)) : pencil}</td>
          </tr>
        </tfoot>
      </table>
      {notes.length > 0 && (
        <ul>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p className="ink-paper__sign">Weighed by and when:</p>
      {children}
    </section>
  );
}
