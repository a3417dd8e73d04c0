/** A blend is stored when it sums to 100 %; until then it is a draft that names what is missing. */
import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { blendSentence, completeBlend } from "../../../src/planner/garments/blendDraft.ts";
import type { DraftBlendPart } from "../../../src/planner/garments/drafts.tsx";
import { FOREST_LINE, openGarments } from "./garmentBench.tsx";

const part = (fibre: DraftBlendPart["fibre"], massFraction: number | null): DraftBlendPart => ({
  fibre,
  massFraction,
  dyed: true,
});
/** The blanks before % do not break. */
const plain = (text: string | null) => text?.replaceAll("\u00a0", " ") ?? null;

describe("blendSentence", () => {
  it("names what is missing and what there is", () => {
    const parts = [part("cotton", 0.5), part("polyester", 0.38)];
    expect(plain(blendSentence(parts))).toBe("12 % is missing: cotton 50 %, polyester 38 % sum to 88 %.");
    expect(completeBlend(parts)).toBeNull();
  });

  it("names what is too much", () => {
    const parts = [part("cotton", 0.5), part("polyester", 0.62)];
    expect(plain(blendSentence(parts))).toBe("12 % too much: cotton 50 %, polyester 62 % sum to 112 %.");
    expect(completeBlend(parts)).toBeNull();
  });

  it("names the fibre whose part is not typed", () => {
    const parts = [part("cotton", 0.9), part("elastane", null)];
    expect(plain(blendSentence(parts))).toBe("10 % is missing: type the part of elastane.");
  });

  it("takes a blend whose label is rounded to whole percents", () => {
    const thirds = [part("cotton", 0.333), part("polyester", 0.333), part("viscose", 0.333)];
    expect(blendSentence(thirds)).toBeNull();
    expect(completeBlend(thirds)).toHaveLength(3);
  });

  it("says of no fibre at all that all is missing", () => {
    expect(plain(blendSentence([]))).toBe("100 % is missing: no fibre is entered.");
    expect(completeBlend([])).toBeNull();
  });
});

describe("the blend in the panel", () => {
  const partOf = (index: number) =>
    within(screen.getByRole("group", { name: `Fibre ${index}` })).getByRole("textbox");

  async function typePart(user: ReturnType<typeof openGarments>["user"], index: number, text: string) {
    await user.clear(partOf(index));
    await user.type(partOf(index), `${text}{Enter}`);
  }

  it("stays a draft while it does not sum, then is stored whole", async () => {
    const { user, lots, store } = openGarments(undefined, FOREST_LINE);
    await typePart(user, 1, "65");
    expect(screen.getByText(/15 % too much/)).toBeInTheDocument();
    expect(lots()[1]?.blend[0]?.massFraction).toBe(0.5);
    expect(store.getState().canUndo).toBe(false);
    await typePart(user, 2, "35");
    expect(lots()[1]?.blend.map(({ massFraction }) => massFraction)).toEqual([0.65, 0.35]);
    expect(screen.queryByText(/too much/)).not.toBeInTheDocument();
  });

  it("keeps the draft while another row is open and marks the row", async () => {
    const { user, rows } = openGarments(undefined, FOREST_LINE);
    await typePart(user, 1, "38");
    await user.click(screen.getByRole("button", { name: "Ring-spun tee, Navy" }));
    expect(rows()[1]).toHaveTextContent("not saved yet: fibre blend");
    await user.click(screen.getByRole("button", { name: "Blend crew tee, Forest" }));
    expect(partOf(1)).toHaveValue("38");
    expect(screen.getByText(/12 % is missing/)).toBeInTheDocument();
  });

  it("goes back to the saved blend when asked to", async () => {
    const { user, rows } = openGarments(undefined, FOREST_LINE);
    await typePart(user, 1, "38");
    await user.click(screen.getByRole("button", { name: "Go back to the saved blend" }));
    expect(partOf(1)).toHaveValue("50");
    expect(rows()[1]).not.toHaveTextContent("not saved yet");
  });

  it("never takes a part beyond 100 %", async () => {
    const { user, lots } = openGarments(undefined, FOREST_LINE);
    await typePart(user, 1, "150");
    expect(partOf(1)).toHaveAccessibleDescription("From 0 % to 100 %.");
    expect(lots()[1]?.blend[0]?.massFraction).toBe(0.5);
  });
});
