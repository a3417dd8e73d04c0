/** A tint follows the slider all through a drag, and one drag is one gesture. */
import { fireEvent, render, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { useState } from "react";
import { expect, it, vi } from "vitest";
import { TintSlider } from "../../../src/planner/controls/TintSlider.tsx";

interface Spies {
  readonly onChange: (massFraction: number, gesture: string) => void;
  readonly onChangeEnd: (massFraction: number) => void;
}

function HeldTint({ onChange, onChangeEnd }: Spies) {
  const [massFraction, setMassFraction] = useState(0.0025);
  return (
    <TintSlider
      label="Black"
      massFraction={massFraction}
      sliderEndFraction={0.01}
      largestFraction={0.05}
      stepFraction={0.0005}
      onChange={(next, gesture) => {
        setMassFraction(next);
        onChange(next, gesture);
      }}
      onChangeEnd={onChangeEnd}
    />
  );
}

function setUp() {
  const onChange = vi.fn<Spies["onChange"]>();
  const onChangeEnd = vi.fn<Spies["onChangeEnd"]>();
  render(<HeldTint onChange={onChange} onChangeEnd={onChangeEnd} />);
  return { slider: screen.getByRole("slider", { name: "Black" }), onChange, onChangeEnd };
}

const gestures = (onChange: ReturnType<typeof setUp>["onChange"]) =>
  onChange.mock.calls.map(([, name]) => name);

it("shows percent and passes on fractions", () => {
  const { slider, onChange } = setUp();
  expect(slider).toHaveAttribute("aria-valuetext", "0.25 %");
  fireEvent.input(slider, { target: { value: "0.5" } });
  expect(onChange.mock.calls[0]?.[0]).toBe(0.005);
});

it("gives all changes of one drag the same gesture, and the next drag another", () => {
  const { slider, onChange, onChangeEnd } = setUp();
  fireEvent.pointerDown(slider);
  fireEvent.input(slider, { target: { value: "0.3" } });
  fireEvent.input(slider, { target: { value: "0.4" } });
  expect(onChangeEnd).not.toHaveBeenCalled();
  fireEvent.change(slider);
  fireEvent.pointerDown(slider);
  fireEvent.input(slider, { target: { value: "0.6" } });
  const [first, second, third] = gestures(onChange);
  expect(first).toBe(second);
  expect(third).not.toBe(first);
});

it("takes a typed tint beyond the slider's end, up to the largest allowed", async () => {
  const { onChange } = setUp();
  const user = userEvent.setup();
  const field = screen.getByRole("textbox", { name: "Black, typed, %" });
  await user.clear(field);
  await user.type(field, "3{Enter}");
  expect(onChange.mock.lastCall?.[0]).toBe(0.03);
  await user.clear(field);
  await user.type(field, "6{Enter}");
  expect(field).toBeInvalid();
  expect(onChange).toHaveBeenCalledTimes(1);
});
