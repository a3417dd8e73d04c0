/** Spare pieces of a garment line: entered where somebody knows them, and nothing where nobody does. */
import { screen } from "@testing-library/react";
import { expect, it } from "vitest";
import { NAVY_LINE, openGarments, smallJob } from "./garmentBench.tsx";

const field = () => screen.getByLabelText(/^Spare pieces to print tests on/);

it("are a whole number once they are entered, and unknown again when the field is emptied", async () => {
  const { user, now } = openGarments(smallJob(), NAVY_LINE);
  const spare = () => now().job.lines.map(({ sparePieceCount }) => sparePieceCount);
  expect(field()).toHaveValue("");
  await user.type(field(), "8{Enter}");
  expect(spare()).toEqual([8, null]);
  await user.clear(field());
  await user.type(field(), "2.5{Enter}");
  expect(field()).toBeInvalid();
  expect(spare()).toEqual([8, null]);
  await user.clear(field());
  await user.tab();
  expect(spare()).toEqual([null, null]);
});
