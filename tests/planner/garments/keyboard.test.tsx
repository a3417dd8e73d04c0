/** The whole of the Garments view works from the keyboard alone. */
import { screen, within } from "@testing-library/react";
import type { UserEvent } from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import { openGarments } from "./garmentBench.tsx";

/** Goes on with Tab until the wanted element has the focus; fails where Tab never gets there. */
async function tabTo(user: UserEvent, wanted: HTMLElement): Promise<void> {
  for (let i = 0; i < 60; i++) {
    if (document.activeElement === wanted) return;
    await user.tab();
  }
  throw new Error(`Tab does not reach ${wanted.outerHTML.slice(0, 120)}`);
}

const field = (name: string) => screen.getByRole("textbox", { name });
const combo = (name: string) => screen.getByRole("combobox", { name });
const button = (name: string) => screen.getByRole("button", { name });

describe("by keyboard alone", () => {
  it("adds a garment that is stored only once it is whole", async () => {
    const { user, now, lots } = openGarments();
    await tabTo(user, button("Add a garment"));
    await user.keyboard("{Enter}");
    expect(combo("Style")).toHaveFocus();
    await user.keyboard("Zip hoodie{Enter}");
    for (const [name, value] of [
      ["L*", "47"],
      ["a*", "-1.5"],
      ["b*", "-6"],
    ] as const) {
      await tabTo(user, field(name));
      await user.keyboard(value);
    }
    await tabTo(user, button("Add a fibre"));
    await user.keyboard("{Enter}");
    expect(now().job.lines).toHaveLength(2);
    await tabTo(user, button("Add a size"));
    await user.keyboard("{Enter}");
    await tabTo(user, field("Pieces, S, pieces"));
    await user.keyboard("{Control>}a{/Control}120");
    await tabTo(user, button("Save garment"));
    await user.keyboard("{Enter}");

    expect(now().job.lines).toHaveLength(3);
    expect(now().job.lines[2]?.quantities).toEqual([{ size: "S", count: 120 }]);
    expect(lots()[2]).toMatchObject({
      style: "Zip hoodie",
      blend: [{ fibre: "cotton", massFraction: 1, dyed: true }],
      bare: { kind: "readings", geometry: "45:0", readings: [{ L: 47, a: -1.5, b: -6 }] },
    });
  });

  it("names what a new garment still lacks, and stores nothing", async () => {
    const { user, now } = openGarments();
    await user.click(button("Add a garment"));
    await user.type(combo("Style"), "Zip hoodie");
    await user.click(button("Save garment"));
    expect(now().job.lines).toHaveLength(2);
    expect(screen.getByText(/still missing: the bare colour, the fibre blend\./)).toBeInTheDocument();
  });

  it("keeps a half-typed new garment while another row is open", async () => {
    const { user, rows } = openGarments();
    await user.click(button("Add a garment"));
    await user.type(combo("Style"), "Zip hoodie{Enter}");
    await user.click(button("Ring-spun tee, Navy"));
    expect(rows().at(-1)).toHaveTextContent("Zip hoodie not saved yet");
    await user.click(button("Zip hoodie"));
    expect(combo("Style")).toHaveValue("Zip hoodie");
  });

  it("moves from row to row with the arrow keys and opens one with Enter", async () => {
    const { user } = openGarments();
    await tabTo(user, button("Ring-spun tee, Navy"));
    await user.keyboard("{ArrowDown}");
    expect(button("Blend crew tee, Forest")).toHaveFocus();
    await user.keyboard("{ArrowDown}{Home}{End}{Enter}");
    expect(screen.getByRole("region", { name: "Garment being edited" })).toHaveTextContent("Blend crew tee");
    expect(screen.getByRole("heading", { name: /Blend crew tee/ })).toHaveFocus();
  });

  it("duplicates a line onto a lot of its own and opens the copy", async () => {
    const { user, now, lots } = openGarments();
    await user.click(button("Ring-spun tee, Navy"));
    await tabTo(user, button("Duplicate"));
    await user.keyboard("{Enter}");
    expect(now().job.lines).toHaveLength(3);
    expect(lots()).toHaveLength(3);
    await user.type(screen.getByRole("textbox", { name: "Lot" }), "{Control>}a{/Control}99{Enter}");
    expect(
      now()
        .library.garmentLots.map(({ lot }) => lot)
        .sort(),
    ).toEqual(["41", "7", "99"]);
  });

  it("removes a line, goes on with the next row, and undo brings it back", async () => {
    const { user, now, store } = openGarments();
    await user.click(button("Ring-spun tee, Navy"));
    await tabTo(user, button("Remove"));
    await user.keyboard("{Enter}");
    expect(now().job.lines).toHaveLength(1);
    expect(button("Blend crew tee, Forest")).toHaveFocus();
    expect(screen.getByText(/was removed. Undo brings it back/)).toBeInTheDocument();
    store.getState().undo();
    expect(now().job.lines).toHaveLength(2);
  });

  it("goes back to the row when the panel is closed", async () => {
    const { user } = openGarments();
    await user.click(button("Blend crew tee, Forest"));
    await user.click(button("Close"));
    expect(button("Blend crew tee, Forest")).toHaveFocus();
  });

  it("totals the pieces of a line and of the job", async () => {
    const { user, rows } = openGarments();
    await user.click(button("Ring-spun tee, Navy"));
    await user.click(button("Add a size"));
    const added = within(screen.getByRole("group", { name: "Size S" })).getByRole("textbox");
    await user.clear(added);
    await user.type(added, "1,100{Enter}");
    expect(rows()[0]).toHaveTextContent("2,000");
    expect(screen.getByText("2 lines, 2,000 pieces")).toBeInTheDocument();
  });
});
