/** Whether a print being typed would count as one that is in the book already, read again. */
import { printKeyOf } from "../evidenceInputs.ts";
import type { TestPrint } from "../recordDocument.ts";
import { standing } from "../standing.ts";

/** The first standing record of the same lot, ink, set-up and hour; null where there is none. */
export function samePrint(prints: readonly TestPrint[], print: TestPrint): TestPrint | null {
  const key = printKeyOf(print);
  const others = standing(prints).filter(({ id }) => id !== print.id && id !== print.supersedesId);
  return others.find((other) => printKeyOf(other) === key) ?? null;
}
