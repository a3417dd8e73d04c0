/** The built page comes up by itself: shown, silent, and from its own files alone. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner } from "./launch.ts";

describe("the built planner", () => {
  let planner: OpenedPlanner;

  beforeEach(async () => {
    planner = await openPlanner({ width: 1440, height: 900 });
  });
  afterEach(async () => {
    await planner?.close();
  });

  it("shows a heading, under its own title", async () => {
    await planner.screenshot("smoke-1440");
    expect(await planner.page.title()).toContain("Tonebench");
    expect(await planner.page.getByRole("heading").first().isVisible()).toBe(true);
  });

  it("says nothing on the console, at first load and after a reload", async () => {
    await planner.page.reload({ waitUntil: "networkidle" });
    expect(planner.consoleMessages).toEqual([]);
  });

  it("asks no other host for anything", () => {
    expect(planner.foreignRequests).toEqual([]);
  });
});
