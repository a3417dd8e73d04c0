/**
 * What a mix inherits from its parts: cure, heat limit, hazards, expiry, always the most restrictive of what the shop
 * entered from its data sheets. Nothing is invented: where a part has nothing entered, the mix has no value either,
 * and the part is named.
 */

/** One part of a mix as the shop entered it; null is "not entered". */
export interface RestrictedPart {
  readonly itemId: string;
  readonly massFraction: number;
  /** Film temperature and time that its data sheet asks for. */
  readonly cureCelsius: number | null;
  readonly cureSeconds: number | null;
  /** The highest film temperature that its data sheet allows. */
  readonly highestCelsius: number | null;
  readonly lowCure: boolean;
  /** Hazard words and statements as on the data sheet; an empty list says that it has none. */
  readonly hazards: readonly string[] | null;
  /** The largest part of a mix that its data sheet allows. */
  readonly largestFraction: number;
  /** Calendar day, YYYY-MM-DD. */
  readonly expiresOn: string | null;
}

/** A property of the mix. */
export interface Inherited<Value> {
  /** Null where any part has nothing entered. */
  readonly value: Value | null;
  /** The most restrictive of what was entered; null where nothing was. */
  readonly amongEntered: Value | null;
  readonly missingItemIds: readonly string[];
}

export type RestrictionCode =
  /** Parts ask for different temperatures. figures: lowestCelsius, highestCelsius. */
  | "cures-differ"
  /** A part asks for more heat than another allows. figures: cureCelsius, highestCelsius. */
  | "cure-above-limit"
  /** Part of the mix is low-cure and part is not. figures: lowCureFraction. */
  | "low-cure-in-part"
  /** More of a part than its data sheet allows. figures: massFraction, largestFraction. */
  | "above-largest-fraction";

export interface Restriction {
  readonly code: RestrictionCode;
  /** The parts it is about. */
  readonly itemIds: readonly string[];
  readonly figures: Readonly<Record<string, number>>;
}

export interface MixRestrictions {
  /** Every part has to reach its own cure: the highest temperature and the longest time. */
  readonly cureCelsius: Inherited<number>;
  readonly cureSeconds: Inherited<number>;
  /** No part may be heated beyond its limit: the lowest. */
  readonly highestCelsius: Inherited<number>;
  readonly lowCure: "all" | "some" | "none";
  /** All hazards of all parts, each once, in the order met. */
  readonly hazards: Inherited<readonly string[]>;
  /** The earliest day; a part without a date does not hide another's. */
  readonly expiresOn: Inherited<string>;
  readonly restrictions: readonly Restriction[];
}

/** Room for the last digits of a recomputed fraction. */
const FRACTION_SLACK = 1e-9;

/**
 * Restrictions of a mix of `parts` (those of no mass do not count); use the fractions that were weighed, masters
 * taken apart. @throws RangeError for a mix without parts.
 */
export function mixRestrictions(parts: readonly RestrictedPart[]): MixRestrictions {
  const present = parts.filter((part) => part.massFraction > 0);
  if (present.length === 0) throw new RangeError("a mix must have parts; got none");
  const cureCelsius = inherit(present, (part) => part.cureCelsius, Math.max);
  const highestCelsius = inherit(present, (part) => part.highestCelsius, Math.min);
  const lowCureParts = present.filter((part) => part.lowCure);
  const lowCure =
    lowCureParts.length === 0 ? "none" : lowCureParts.length === present.length ? "all" : "some";
  const restrictions: Restriction[] = [];
  const lowestCure = inherit(present, (part) => part.cureCelsius, Math.min).amongEntered;
  if (cureCelsius.amongEntered !== null && lowestCure !== null && lowestCure < cureCelsius.amongEntered) {
    restrictions.push({
      code: "cures-differ",
      itemIds: present.filter((part) => part.cureCelsius !== null).map((part) => part.itemId),
      figures: { lowestCelsius: lowestCure, highestCelsius: cureCelsius.amongEntered },
    });
  }
  const limit = highestCelsius.amongEntered;
  if (cureCelsius.amongEntered !== null && limit !== null && cureCelsius.amongEntered > limit) {
    restrictions.push({
      code: "cure-above-limit",
      itemIds: present
        .filter(
          (part) =>
            part.cureCelsius === cureCelsius.amongEntered ||
            part.highestCelsius === highestCelsius.amongEntered,
        )
        .map((part) => part.itemId),
      figures: { cureCelsius: cureCelsius.amongEntered, highestCelsius: limit },
    });
  }
  if (lowCure === "some") {
    const lowCureFraction = lowCureParts.reduce((sum, part) => sum + part.massFraction, 0);
    restrictions.push({
      code: "low-cure-in-part",
      itemIds: lowCureParts.map((part) => part.itemId),
      figures: { lowCureFraction },
    });
  }
  for (const { itemId, massFraction, largestFraction } of present) {
    if (massFraction > largestFraction + FRACTION_SLACK) {
      const figures = { massFraction, largestFraction };
      restrictions.push({ code: "above-largest-fraction", itemIds: [itemId], figures });
    }
  }
  return {
    cureCelsius,
    cureSeconds: inherit(present, (part) => part.cureSeconds, Math.max),
    highestCelsius,
    lowCure,
    hazards: inherit(
      present,
      (part) => (part.hazards === null ? null : [...new Set(part.hazards)]),
      (one, other) => [...new Set([...one, ...other])],
    ),
    expiresOn: inherit(
      present,
      (part) => part.expiresOn,
      (one, other) => [one, other].sort()[0]!,
    ),
    restrictions,
  };
}

function inherit<Value>(
  parts: readonly RestrictedPart[],
  enteredBy: (part: RestrictedPart) => Value | null,
  stricter: (one: Value, other: Value) => Value,
): Inherited<Value> {
  let amongEntered: Value | null = null;
  const missingItemIds: string[] = [];
  for (const part of parts) {
    const value = enteredBy(part);
    if (value === null) missingItemIds.push(part.itemId);
    else amongEntered = amongEntered === null ? value : stricter(amongEntered, value);
  }
  return { value: missingItemIds.length === 0 ? amongEntered : null, amongEntered, missingItemIds };
}
