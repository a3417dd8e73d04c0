/**
 * In which order the mixes and their garments go to press: fewest wash-ups first, then least minutes. Going lighter,
 * into another base family or between low-cure and standard ink takes a wash-up, so that the order runs light to dark,
 * keeps one base family together and low-cure ink apart.
 */
import { shortestOrder } from "./shortestOrder.ts";

/** One mix on one screen, with all the garments printed that way. */
export interface PressRun {
  readonly id: string;
  readonly mixId: string;
  /** Artwork and mesh: mixes that are printed through one screen one after the other have its id in common. */
  readonly screenId: string;
  /** The base that makes up most of the mix. */
  readonly baseFamilyId: string;
  readonly lowCure: boolean;
  /** How dark the ink is, any scale that grows with darkness: such as its tint as a mass fraction. White first. */
  readonly darkness: number;
  readonly garmentIds: readonly string[];
}

/** Minutes of each kind of change. */
export interface ChangeMinutes {
  /** Scraping out and wiping on to a mix of the same base that is no lighter. */
  readonly wipe: number;
  /** Washing screen, blades and spatulas. */
  readonly washUp: number;
  /** Besides a wash-up: standard ink left in low-cure ink, or the other way round, cures at the wrong heat. */
  readonly lowCureCleaning: number;
  /** Besides either: going from dark to lighter needs a second pass. */
  readonly darkToLight: number;
  /** Another screen on the press. */
  readonly screenSetUp: number;
}

/**
 * Wash-up: the middle of 10 to 15 minutes, from memory, no source. Screen: 9 minutes, a trade example (trade magazine,
 * August 2018). The others are invented defaults.
 */
export const DEFAULT_CHANGE_MINUTES: ChangeMinutes = {
  wipe: 3,
  washUp: 12,
  lowCureCleaning: 15,
  darkToLight: 3,
  screenSetUp: 9,
};

/** What one change on press consists of. */
export interface Change {
  readonly ink: "none" | "wipe" | "wash-up";
  readonly screen: boolean;
  readonly minutes: number;
}

export interface RunOrder {
  /** The runs in order. */
  readonly runIds: readonly string[];
  /** Between each run and the next. */
  readonly changes: readonly Change[];
  readonly minutes: number;
  readonly washUpCount: number;
  readonly screenChangeCount: number;
  /** Whether no other order takes fewer wash-ups, or as many and fewer minutes; false from 13 runs on. */
  readonly proven: boolean;
}

/** Weight of a wash-up against a minute: fewer wash-ups win whatever the minutes of up to a hundred runs. */
const WASH_UP_WEIGHT = 1e5;

/** What it takes to go from one run to another. */
export function changeBetween(from: PressRun, to: PressRun, minutes: ChangeMinutes): Change {
  const screen = from.screenId !== to.screenId;
  const screenMinutes = screen ? minutes.screenSetUp : 0;
  if (from.mixId === to.mixId) return { ink: "none", screen, minutes: screenMinutes };
  const sameFamily = from.baseFamilyId === to.baseFamilyId && from.lowCure === to.lowCure;
  const lighter = to.darkness < from.darkness;
  if (sameFamily && !lighter) return { ink: "wipe", screen, minutes: screenMinutes + minutes.wipe };
  const crossing = from.lowCure === to.lowCure ? 0 : minutes.lowCureCleaning;
  const secondPass = lighter ? minutes.darkToLight : 0;
  return { ink: "wash-up", screen, minutes: screenMinutes + minutes.washUp + crossing + secondPass };
}

/** Every change from one run (row) to another (column); a run to itself is no change. */
export function changeTable(
  runs: readonly PressRun[],
  minutes: ChangeMinutes = DEFAULT_CHANGE_MINUTES,
): Change[][] {
  return runs.map((from) => runs.map((to) => changeBetween(from, to, minutes)));
}

/**
 * The order of `runs` with the fewest wash-ups, and among those the least minutes of change: exact by Held & Karp (1962)
 * up to twelve runs, beyond that the best found, and it says so. Among equals light comes before dark.
 * @throws RangeError for negative minutes or a darkness that is not a number.
 */
export function planRunOrder(
  runs: readonly PressRun[],
  minutes: ChangeMinutes = DEFAULT_CHANGE_MINUTES,
): RunOrder {
  for (const { darkness } of runs) {
    if (!Number.isFinite(darkness)) throw new RangeError(`darkness must be finite; got ${darkness}`);
  }
  for (const [name, value] of Object.entries(minutes)) {
    if (!(value >= 0 && value < Infinity))
      throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
  }
  const lightFirst = [...runs].sort((one, other) => one.darkness - other.darkness);
  const table = changeTable(lightFirst, minutes);
  const weights = table.map((row) => row.map((change) => weightOf(change)));
  const { order, proven } = shortestOrder(weights);
  const ordered = order.map((i) => lightFirst[i]!);
  const changes = order.slice(1).map((to, i) => table[order[i]!]![to]!);
  return {
    runIds: ordered.map((run) => run.id),
    changes,
    minutes: changes.reduce((sum, change) => sum + change.minutes, 0),
    washUpCount: changes.filter((change) => change.ink === "wash-up").length,
    screenChangeCount: changes.filter((change) => change.screen).length,
    proven,
  };
}

function weightOf({ ink, minutes }: Change): number {
  return minutes + (ink === "wash-up" ? WASH_UP_WEIGHT : 0);
}
