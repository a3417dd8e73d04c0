/** A calendar day, typed as it is stored: year-month-day, so that no country's order of day and month can be meant. */
import { isDay } from "../../job/calendarDay.ts";
import { TextEntry } from "./TextEntry.tsx";

interface Props {
  readonly label: string;
  readonly day: string | null;
  readonly hint?: string;
  readonly labelUnseen?: boolean;
  readonly onCommit: (day: string | null) => void;
}

const LONGEST = 10;
const dayProblem = (text: string) => (isDay(text) ? null : "A day as year-month-day, like 2026-03-02.");

export function DayEntry({ day, onCommit, ...rest }: Props) {
  return (
    <TextEntry
      {...rest}
      value={day ?? ""}
      maxLength={LONGEST}
      placeholder="not entered"
      check={dayProblem}
      onCommit={(text) => onCommit(text === "" ? null : text)}
    />
  );
}
