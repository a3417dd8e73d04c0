/** The bare colour in its three ways: what is incomplete or wrong never reaches the document. */
import { fireEvent, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { NAVY_LINE, openGarments } from "./garmentBench.tsx";

const button = (name: string) => screen.getByRole("button", { name });
const field = (name: string) => screen.getByRole("textbox", { name });

describe("readings", () => {
  it("adds a reading only when all three figures are typed", async () => {
    const { user, lots } = openGarments(undefined, NAVY_LINE);
    await user.click(button("Add a reading"));
    await user.type(field("L* of reading 2"), "22.5{Enter}");
    expect(screen.getByText(/a\* of reading 2, b\* of reading 2 are missing/)).toBeInTheDocument();
    expect(lots()[0]?.bare).toMatchObject({ readings: [{ L: 21.5 }] });
    await user.type(field("a* of reading 2"), "1{Enter}");
    await user.type(field("b* of reading 2"), "\u221213{Enter}");
    expect(lots()[0]?.bare).toMatchObject({ readings: [{ L: 21.5 }, { L: 22.5, a: 1, b: -13 }] });
  });

  it("keeps the light they were read under with them", async () => {
    const { user, lots } = openGarments(undefined, NAVY_LINE);
    await user.selectOptions(screen.getByRole("combobox", { name: "Light" }), "A");
    await user.selectOptions(screen.getByRole("combobox", { name: "Observer" }), "2°");
    expect(lots()[0]?.bare).toMatchObject({ viewing: { illuminant: "A", observer: "2deg" } });
  });

  it("says when no cloth can have the colour", async () => {
    const { user } = openGarments(undefined, NAVY_LINE);
    await user.clear(field("b*"));
    await user.type(field("b*"), "140{Enter}");
    expect(screen.getByText(/No cloth can have this colour under D65\/10°/)).toBeInTheDocument();
  });
});

describe("a pasted spectrum", () => {
  const spectrum = Array.from({ length: 36 }, (_, i) => 5 + i).join("\t");

  async function paste(text: string) {
    const bench = openGarments(undefined, NAVY_LINE);
    await bench.user.click(screen.getByRole("radio", { name: "Spectrum" }));
    await bench.user.click(field("Reflectance values, or wavelength and value in two columns"));
    await bench.user.paste(text);
    await bench.user.click(button("Use this spectrum"));
    return bench;
  }

  it("is stored with what was assumed, and says so", async () => {
    const { lots } = await paste(spectrum);
    const bare = lots()[0]?.bare;
    expect(bare).toMatchObject({ kind: "spectrum", geometry: "45:0" });
    expect(bare?.kind === "spectrum" && bare.reflectance[35]).toBeCloseTo(0.4, 12);
    expect(screen.getByText("Read as percents, because a value is above 1.5.")).toBeInTheDocument();
  });

  it("is refused with the word that is no number, and what was pasted stays", async () => {
    const { lots } = await paste(`0.1 x ${spectrum}`);
    expect(screen.getByRole("alert")).toHaveTextContent("Value 2 is not a number: “x”.");
    expect(field("Reflectance values, or wavelength and value in two columns")).toHaveValue(
      `0.1 x ${spectrum}`,
    );
    expect(lots()[0]?.bare.kind).toBe("readings");
  });

  it("is refused where the wavelengths are unknown, and taken once they are typed", async () => {
    const { user, lots } = await paste(Array.from({ length: 33 }, () => "0.2").join(" "));
    expect(screen.getByRole("alert")).toHaveTextContent(/33 values do not tell their wavelengths/);
    await user.type(field("First wavelength, nm"), "390");
    await user.type(field("Last wavelength, nm"), "710");
    await user.click(button("Use this spectrum"));
    expect(lots()[0]?.bare).toMatchObject({
      kind: "spectrum",
      assumptions: ["short-end-extended:380-380", "long-end-extended:720-730"],
    });
  });

  it("leaves the readings alone when the way is only looked at", async () => {
    const { user, lots, rows } = openGarments(undefined, NAVY_LINE);
    await user.click(screen.getByRole("radio", { name: "Spectrum" }));
    expect(rows()[0]).toHaveTextContent("not saved yet: bare colour");
    await user.click(screen.getByRole("radio", { name: "Readings" }));
    expect(rows()[0]).not.toHaveTextContent("not saved yet");
    expect(lots()[0]?.bare.kind).toBe("readings");
  });
});

describe("a picked colour", () => {
  it("is stored as approximate, a drag in the picker being one step of undo", async () => {
    const { user, lots, rows, store } = openGarments(undefined, NAVY_LINE);
    await user.click(screen.getByRole("radio", { name: "Picked" }));
    const picker = screen.getByLabelText("Pick");
    fireEvent.focus(picker);
    fireEvent.input(picker, { target: { value: "#203040" } });
    fireEvent.input(picker, { target: { value: "#203050" } });
    expect(lots()[0]?.bare).toEqual({ kind: "hex", hex: "#203050" });
    expect(rows()[0]).toHaveTextContent("approximate, from a screen");
    store.getState().undo();
    expect(lots()[0]?.bare.kind).toBe("readings");
  });

  it("is refused where it is not six digits", async () => {
    const { user, lots } = openGarments(undefined, NAVY_LINE);
    await user.click(screen.getByRole("radio", { name: "Picked" }));
    await user.type(field("Or type it, as #rrggbb"), "#12345{Enter}");
    expect(screen.getByRole("alert")).toHaveTextContent("Six digits after #, as #30503a.");
    expect(lots()[0]?.bare.kind).toBe("readings");
  });
});
