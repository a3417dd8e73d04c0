// The dense solver under the reconstruction.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveInPlace } from "../../../src/core/colorimetry/linearSystem.ts";

const entry = fc.double({ min: -1, max: 1, noNaN: true });

describe("the linear solver", () => {
  it("finds the vector that a diagonally dominant matrix was applied to, rows in any order", () => {
    fc.assert(
      fc.property(
        fc.array(entry, { minLength: 25, maxLength: 25 }),
        fc.array(entry, { minLength: 5, maxLength: 5 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }),
        (entries, wanted, order) => {
          const matrix = Float64Array.from(
            order.flatMap((row) =>
              entries.slice(5 * row, 5 * row + 5).map((value, k) => value + (k === row ? 6 : 0)),
            ),
          );
          const rhs = Float64Array.from({ length: 5 }, (_, i) =>
            wanted.reduce((sum, value, k) => sum + matrix[5 * i + k]! * value, 0),
          );
          expect(solveInPlace(matrix, rhs)).toBe(true);
          wanted.forEach((value, i) => {
            expect(rhs[i]).toBeCloseTo(value, 12);
          });
        },
      ),
    );
  });

  it("solves a bordered system whose first pivot is 0, as the constraints of Newton's step make it", () => {
    const rhs = Float64Array.of(2, 5);
    expect(solveInPlace(Float64Array.of(0, 1, 1, 0), rhs)).toBe(true);
    expect([...rhs]).toEqual([5, 2]);
  });

  it("says when there is no single answer", () => {
    expect(solveInPlace(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1))).toBe(false);
    expect(solveInPlace(Float64Array.of(Number.NaN, 1, 1, 1), Float64Array.of(1, 1))).toBe(false);
  });
});
