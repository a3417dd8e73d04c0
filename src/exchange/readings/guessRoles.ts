/** Tells from a table's headings which columns hold the readings. The guess is shown, never more than that. */
import {
  axisOf,
  type ColourAxis,
  type ColumnRole,
  conditionOf,
  nameRank,
  wavelengthOf,
} from "./columnNames.ts";
import { type ConditionTexts, conditionsFrom } from "./conditions.ts";
import { geometryFrom, lightFrom, observerFrom } from "./conditionWords.ts";

export interface GuessedRoles {
  /** One role for each heading. */
  readonly roles: readonly ColumnRole[];
  /** Whether there is a spectrum or a whole Lab or XYZ among them. */
  readonly hasReadings: boolean;
  /** Headings that hold readings of another set (another light, XYZ beside Lab) and are left out. */
  readonly leftOut: readonly string[];
}

/** Fewer columns with a wavelength are some other figure, not a spectrum. */
const FEWEST_WAVELENGTHS = 4;

type AxisSet = ReadonlyMap<ColourAxis, readonly number[]>;

/** The columns of each colour axis, by the conditions that their headings state. */
function axisSets(headings: readonly string[]): AxisSet[] {
  const sets = new Map<string, Map<ColourAxis, number[]>>();
  for (const [column, heading] of headings.entries()) {
    const found = axisOf(heading);
    if (found === null) continue;
    const said = conditionsFrom(conditionTextsOf(found.conditions));
    const key = `${said.light ?? said.otherLight} ${said.observer} ${said.geometry}`;
    const set = sets.get(key) ?? new Map<ColourAxis, number[]>();
    sets.set(key, set);
    set.set(found.axis, [...(set.get(found.axis) ?? []), column]);
  }
  return [...sets.values()];
}

/** What a heading's conditions say: of each condition only what is understood, since one text speaks of several. */
export function conditionTextsOf(conditions: string): ConditionTexts {
  const kind = lightFrom(conditions)?.kind;
  return {
    light: kind === "known" || kind === "other" ? [conditions] : [],
    observer: observerFrom(conditions) === null ? [] : [conditions],
    geometry: geometryFrom(conditions) === null ? [] : [conditions],
  };
}

const has = (set: AxisSet, axes: readonly ColourAxis[]): boolean => axes.every((axis) => set.has(axis));

/** The best name column, or -1. */
function nameColumn(headings: readonly string[]): number {
  let best = -1;
  let bestRank = Number.POSITIVE_INFINITY;
  for (const [column, heading] of headings.entries()) {
    const rank = nameRank(heading);
    if (rank !== null && rank < bestRank) {
      best = column;
      bestRank = rank;
    }
  }
  return best;
}

/**
 * A role for every heading. Among several sets of Lab the first whole one is taken; Lab before XYZ. What stands twice
 * keeps its role twice: `tableColumns` refuses it.
 */
export function guessRoles(headings: readonly string[]): GuessedRoles {
  const roles: ColumnRole[] = headings.map(() => "left-out");
  const wavelengths = headings.map(wavelengthOf);
  const hasSpectrum = wavelengths.filter((nm) => nm !== null).length >= FEWEST_WAVELENGTHS;
  if (hasSpectrum)
    for (const [column, nm] of wavelengths.entries()) if (nm !== null) roles[column] = `nm:${nm}`;
  const sets = axisSets(headings);
  const lab = sets.find((set) => has(set, ["L", "a", "b"]));
  const xyz = lab === undefined ? sets.find((set) => has(set, ["X", "Y", "Z"])) : undefined;
  const axes: readonly ColourAxis[] = lab !== undefined ? ["L", "a", "b"] : ["X", "Y", "Z"];
  for (const axis of axes) {
    for (const column of (lab ?? xyz)?.get(axis) ?? []) roles[column] = axis;
  }
  for (const [column, heading] of headings.entries()) {
    const condition = conditionOf(heading);
    if (condition !== null && !roles.includes(condition)) roles[column] = condition;
  }
  const name = nameColumn(headings);
  if (name >= 0) roles[name] = "name";
  const leftOut = headings.filter((heading, i) => roles[i] === "left-out" && axisOf(heading) !== null);
  return { roles, hasReadings: hasSpectrum || lab !== undefined || xyz !== undefined, leftOut };
}
