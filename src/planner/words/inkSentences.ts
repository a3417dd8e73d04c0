/** What the ink room has to say about a batch, as sentences: the sheet, the shelf, the parts of a mix, the print. */
import type { DyeMigrationRisk } from "../../core/planning/ink/dyeMigration.ts";
import type { Restriction } from "../../core/planning/ink/mixRestrictions.ts";
import type { PrintQualityNote } from "../../core/planning/ink/printQualityNotes.ts";
import type { Remark } from "../../core/planning/ink/remark.ts";
import type { WeighSheetNoticeCode, WeighSheetProblemCode } from "../../core/planning/ink/weighSheet.ts";
import type { BatchNotice } from "../../job/inkRoom/inkBatch.ts";
import { shopUnits, type UnitChoice } from "../../units/shopUnits.ts";
import { format } from "../../units/unit.ts";
import { percentWords } from "./garmentWords.ts";
import { amountWords, onScaleWords, scaleWords, temperatureWords, truePercentWords } from "./inkFigures.ts";

/** What a sentence needs besides its figures. */
export interface InkWords {
  readonly units: UnitChoice;
  readonly scaleStepGrams: number;
  readonly nameOf: (itemId: string) => string;
}

type Figures = Readonly<Record<string, number>>;
const of = (figures: Figures, name: string): number => figures[name] ?? Number.NaN;

export function sheetNoticeSentence(
  { code, itemId, figures }: Remark<WeighSheetNoticeCode>,
  { units, scaleStepGrams, nameOf }: InkWords,
): string {
  const weigh = (name: string) => scaleWords(of(figures, name), scaleStepGrams, units);
  const part = (name: string) => percentWords(of(figures, name));
  switch (code) {
    case "weighed-as-master":
      return `${nameOf(itemId)} is weighed as its ${part("masterFraction")} master: ${weigh("masterGrams")} instead of ${weigh("neatGrams")} neat. The ${weigh("baseGrams")} of base in it are taken off the base above.`;
    case "master-in-another-base":
      return `The master brings ${nameOf(itemId)} into the mix, which the recipe does not name: ${part("baseFraction")} of it. It is counted.`;
    case "master-would-help":
      return `A ${part("masterFraction")} master of ${nameOf(itemId)} would be weighed better: ${weigh("masterGrams")}. None is at hand.`;
    case "under-fifty-steps":
      return `${nameOf(itemId)} is only ${of(figures, "stepCount")} steps of the scale, under ${of(figures, "fewestStepCount")}: it is known to ${percentWords(Number((1 / of(figures, "stepCount")).toFixed(2)))} at best. From ${amountWords(of(figures, "leastBatchGrams"), units)} on a pot is large enough.`;
  }
}

export function sheetProblemSentence(
  { code, itemId, figures }: Remark<WeighSheetProblemCode>,
  { units, scaleStepGrams, nameOf }: InkWords,
): string {
  switch (code) {
    case "rounds-to-nothing":
      return `${nameOf(itemId)} would be ${of(figures, "exactGrams").toPrecision(2)}\u00a0g, less than half a step of ${onScaleWords(scaleStepGrams, scaleStepGrams, units)}: it cannot be weighed. From ${amountWords(of(figures, "leastBatchGrams"), units)} a pot on, or as a master, it can.`;
    case "chosen-form-impossible":
      return `${nameOf(itemId)} cannot be weighed in the form that was chosen: that master is not at hand, or its own base finds no room in the recipe.`;
  }
}

export function batchNoticeSentence({ code, name, figures }: BatchNotice, units: UnitChoice): string {
  const amount = (key: string) => amountWords(of(figures, key), units);
  switch (code) {
    case "scale-overloaded":
      return `A pot of ${amount("potGrams")} is more than ${name} carries (${amount("maxGrams")}): choose a smaller pot or another scale.`;
    case "master-runs-out":
      return `${name}: ${amount("neededGrams")} are needed and ${amount("gramsLeft")} are left. Make a new one first.`;
    case "master-expired":
      return `${name} is past its day and is not offered. Make a new one, or change its day on the shelf if it was tested.`;
    case "recipe-changed": {
      const count = of(figures, "potCount");
      return `${count === 1 ? "One pot" : `${count} pots`} on record ${count === 1 ? "was" : "were"} mixed by another recipe than this mix has now.`;
    }
  }
}

export function restrictionSentence(
  { code, itemIds, figures }: Restriction,
  { units, nameOf }: Pick<InkWords, "units" | "nameOf">,
): string {
  const names = itemIds.map(nameOf).join(", ");
  const celsius = (name: string) => temperatureWords(of(figures, name), units);
  switch (code) {
    case "cures-differ":
      return `Its parts ask for different cures, ${celsius("lowestCelsius")} to ${celsius("highestCelsius")}: the film has to reach the highest.`;
    case "cure-above-limit":
      return `A part asks for ${celsius("cureCelsius")} and another allows no more than ${celsius("highestCelsius")} (${names}). Such a mix cannot be cured as entered.`;
    case "low-cure-in-part":
      return `Part of the mix is low-cure (${names}, ${truePercentWords(of(figures, "lowCureFraction"))}) and part is not: it cures like its slowest part.`;
    case "above-largest-fraction":
      return `${names}: ${truePercentWords(of(figures, "massFraction"))} by the rounded grams is more than its data sheet allows, ${percentWords(of(figures, "largestFraction"))}.`;
  }
}

const HANDS = { soft: "soft", medium: "medium", heavy: "heavy" } as const;

export function printNoteSentence(note: PrintQualityNote, units: UnitChoice): string {
  const deposit = `${note.figures.depositUm.toFixed(1)}\u00a0µm`;
  if (note.code === "hand") {
    const softer = note.hand === "soft" ? "" : " A finer mesh would feel softer.";
    return `Hand: ${HANDS[note.hand]}, at ${format(note.figures.threadsPerCm, shopUnits(units).threadCount)} and ${deposit} of ink.${softer}`;
  }
  return `A film of ${deposit} is thin${note.thirsty ? " for cloth that drinks ink" : ""}, under ${note.figures.mottleBelowUm}\u00a0µm: it may wet out in patches. Make a test print and look at it from a metre.`;
}

export function dyeMigrationSentence(risk: DyeMigrationRisk, garment: string): string {
  const polyester = percentWords(Number(risk.figures.dyedPolyesterFraction.toFixed(3)));
  const colour = risk.colour === null ? "" : `, ${risk.colour}`;
  return risk.level === "high"
    ? `${garment}: ${polyester} dyed polyester${colour}. Its dye rises into a white under heat: the print turns the colour of the cloth over hours. Cool, hold for a day and look again before the run.`
    : `${garment}: ${polyester} dyed polyester${colour}. Some dye may rise into a white under heat: hold a print for a day.`;
}

/** Notes on a white ink that hold whatever the garment. */
export function whiteSentences(white: {
  readonly massFraction: number;
  readonly clothCoverFraction: number | null;
}): readonly string[] {
  const cover =
    white.clothCoverFraction === null
      ? "How much of the cloth it covers is the model's default for its white content"
      : `It covers ${percentWords(white.clothCoverFraction)} of the cloth, as entered`;
  return [
    `${percentWords(Number(white.massFraction.toFixed(5)))} white ink. ${cover}: read a test print to know.`,
    "A thin white lets fibres through after washing: wash a test print, half of it kept, before the run.",
  ];
}
