// Numbers spread evenly over a range, both ends included: fast-check's own double() is even over bit patterns, so from
// 0 to 1 it draws hardly anything but numbers like 1e-150, where most laws hold by vanishing.
import fc from "fast-check";

const STEPS = 1_000_000;

export function between(lowest: number, highest: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: STEPS }).map((i) => {
    return i === STEPS ? highest : lowest + ((highest - lowest) * i) / STEPS;
  });
}
