/** A typed number reaches the document when it is right, and never when it is wrong. */
import { render, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { expect, it, vi } from "vitest";
import { NumberEntry } from "../../../src/planner/controls/NumberEntry.tsx";

function setUp(value: number | null = 12) {
  const onCommit = vi.fn();
  const view = render(
    <NumberEntry label="Part" value={value} min={0} max={100} unit="%" onCommit={onCommit} />,
  );
  const field = screen.getByRole("textbox", { name: "Part, %" });
  const show = (next: number) =>
    view.rerender(<NumberEntry label="Part" value={next} min={0} max={100} unit="%" onCommit={onCommit} />);
  return { field, onCommit, show, user: userEvent.setup() };
}

it("commits on Enter and not while typing", async () => {
  const { field, onCommit, user } = setUp();
  await user.clear(field);
  await user.type(field, "45");
  expect(onCommit).not.toHaveBeenCalled();
  await user.keyboard("{Enter}");
  expect(onCommit).toHaveBeenCalledExactlyOnceWith(45);
});

it("commits when the field is left", async () => {
  const { field, onCommit, user } = setUp();
  await user.clear(field);
  await user.type(field, "0,5");
  await user.tab();
  expect(onCommit).toHaveBeenCalledExactlyOnceWith(0.5);
});

it("keeps a wrong entry in the field, says why, and commits nothing", async () => {
  const { field, onCommit, user } = setUp();
  await user.clear(field);
  await user.type(field, "120");
  await user.tab();
  expect(field).toHaveValue("120");
  expect(field).toBeInvalid();
  expect(field).toHaveAccessibleDescription("From 0 % to 100 %.");
  expect(onCommit).not.toHaveBeenCalled();
});

it("asks for a number where the field may not be empty", async () => {
  const { field, onCommit, user } = setUp();
  await user.clear(field);
  await user.tab();
  expect(screen.getByRole("alert")).toHaveTextContent("A number is needed here.");
  expect(onCommit).not.toHaveBeenCalled();
});

it("does not write back a value that was only looked at, however it is shown", async () => {
  const { field, onCommit, user } = setUp(1 / 3);
  await user.click(field);
  await user.tab();
  expect(onCommit).not.toHaveBeenCalled();
});

it("gives the old value back on Escape", async () => {
  const { field, onCommit, user } = setUp();
  await user.clear(field);
  await user.type(field, "99{Escape}");
  expect(field).toHaveValue("12");
  await user.tab();
  expect(onCommit).not.toHaveBeenCalled();
});

it("follows the document when undo changes the value under a wrong entry", async () => {
  const { field, show, user } = setUp();
  await user.clear(field);
  await user.type(field, "abc");
  await user.tab();
  show(7);
  expect(field).toHaveValue("7");
  expect(field).toBeValid();
});
