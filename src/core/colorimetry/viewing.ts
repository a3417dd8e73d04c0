/**
 * What a colour number is bound to: the light, the observer, and the types of tristimulus values and CIELAB.
 * A viewing is a value that is passed along; there is no global light (style.md).
 */

/** The lights a reading can be stated for; LED is a warm phosphor LED (model.md §1). */
export const ILLUMINANT_NAMES = ["D65", "D50", "A", "F11", "LED"] as const;
export type IlluminantName = (typeof ILLUMINANT_NAMES)[number];

/** CIE 1931 2 degree and CIE 1964 10 degree standard observer. */
export const OBSERVER_NAMES = ["2deg", "10deg"] as const;
export type ObserverName = (typeof OBSERVER_NAMES)[number];

export interface Viewing {
  readonly illuminant: IlluminantName;
  readonly observer: ObserverName;
}

/** Readings are only ever compared under the same light and observer. */
export function isSameViewing(one: Viewing, other: Viewing): boolean {
  return one.illuminant === other.illuminant && one.observer === other.observer;
}

/** X, Y, Z with Y = 100 for the perfect reflecting diffuser. */
export interface Tristimulus {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
}

/** CIELAB 1976: L 0..100 for reflectances 0..1, a and b signed. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}
