/** Money in the details of a cell. */
import { screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { openMatrix, standInForTheBrowser } from "./matrixBench.tsx";

beforeEach(() => standInForTheBrowser());

describe("the expected loss of a cell", () => {
  it("stands in its details with what it is made of, and follows what is edited there", async () => {
    const { user } = await openMatrix();
    const pane = within(screen.getByRole("region", { name: "The cell looked at" }));
    // 900 pieces of 3.10 and a print of 0.39, 70 % refused, 44 % in band: 900 × 3.49 × 0.7 × 0.56.
    expect(await pane.findByText("1,231 EUR")).toBeInTheDocument();
    expect(pane.getByText(/^of 2,199 EUR: 900 pieces, 3\.49 EUR each, 70 % refused/)).toBeInTheDocument();
    await user.click(pane.getByText("What the money rests on"));
    const refused = pane.getByRole("textbox", { name: /^Refused where out of band/ });
    await user.clear(refused);
    await user.type(refused, "50{Enter}");
    expect(pane.getByText("879 EUR")).toBeInTheDocument();
  });
});
