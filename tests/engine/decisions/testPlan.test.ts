// The test plan from the demo's documents: the mill B forest first, limits kept, renewed by an answer.
import { describe, expect, it } from "vitest";
import { withFirstOff } from "../../../src/engine/decisions/firstOffRecord.ts";
import { learnedFrom } from "../../../src/engine/decisions/posteriorOf.ts";
import { plannedTests } from "../../../src/engine/decisions/testPlanWork.ts";
import { lineLoss } from "../../../src/job/decisions/lineMoney.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { demoDocuments, forests, withForestChosen } from "./demoJob.ts";

const TODAY = "2026-02-20";
const documents = demoDocuments();
const { line, place } = forests(documents);
const planFor = (on: Documents, today = TODAY) => plannedTests(on, learnedFrom(on.library), today);
const withSpare = (on: Documents, count: number | null): Documents =>
  on.job.lines.reduce((now, { id }) => changeLine(now, id, { sparePieceCount: count }), on);

describe("the demo's test plan", () => {
  const plan = planFor(documents);

  it("names the mill B forest first, as a test that pays many times over", () => {
    const [first] = plan.tests;
    expect(first).toMatchObject({ lineId: line.id, placeId: place.id });
    expect(first!.riskRemoved).toBeGreaterThan(5 * first!.cost);
  });

  it("tells of the first pick before the list is done", () => {
    const picked: string[] = [];
    plannedTests(documents, learnedFrom(documents.library), TODAY, ({ lineId }) => picked.push(lineId));
    expect(picked[0]).toBe(line.id);
    expect(picked.length).toBeGreaterThanOrEqual(plan.tests.length);
  });

  it("parts the risk into what tests can take away and what they cannot", () => {
    expect(plan.avoidable).toBeGreaterThan(0);
    expect(plan.avoidable).toBeLessThan(plan.lossNow);
    const saved = plan.tests.reduce((sum, { riskRemoved, cost }) => sum + riskRemoved - cost, 0);
    // While candidates are compared, gains below 0.4 % of a garment's variance are not followed.
    expect(Math.abs(saved / plan.netWorth - 1)).toBeLessThan(1e-3);
    expect(plan.next!.riskRemoved).toBeLessThanOrEqual(plan.next!.cost);
    const perLine = plan.lines.reduce((sum, { lossNow, lossIfKnown }) => sum + lossNow - lossIfKnown, 0);
    expect(perLine).toBeCloseTo(plan.avoidable, 6);
  });

  it("lists no test that removes less than it costs beside those before it", () => {
    for (const { riskRemoved, cost } of plan.tests) expect(riskRemoved).toBeGreaterThan(cost);
  });

  it("counts the loss of each line's best print as it is counted everywhere: by its chance alone, what its ink costs apart", () => {
    for (const { lineId, lossNow, best } of plan.lines) {
      const own = documents.job.lines.find(({ id }) => id === lineId)!;
      const { expectedLoss } = lineLoss(documents, own, best.chanceInBand);
      // The plan's normal integrals are tabulated: see `normalCumulativeFast`.
      expect(Math.abs(lossNow - expectedLoss)).toBeLessThan(1e-3 * Math.max(1, expectedLoss));
    }
    expect(plan.lossNow).toBeCloseTo(
      plan.lines.reduce((sum, { lossNow }) => sum + lossNow, 0),
      6,
    );
  });

  it("asks for more pairs on a heather than on a solid", () => {
    const heatherIds = new Set(
      documents.library.garmentLots.filter(({ heather }) => heather).map(({ id }) => id),
    );
    const isHeather = (lineId: string) =>
      heatherIds.has(documents.job.lines.find(({ id }) => id === lineId)!.garmentLotId);
    const pairs = (of: boolean) =>
      plan.tests
        .filter(({ lineId, placeId }) => placeId === place.id && isHeather(lineId) === of)
        .map(({ pairCount }) => pairCount);
    expect(Math.min(...pairs(true))).toBeGreaterThan(Math.max(...pairs(false)));
  });

  it("makes no more tests than the days before the run allow, and none on the day itself", () => {
    const at = (runStartsOn: string): Documents => ({ ...documents, job: { ...documents.job, runStartsOn } });
    const { perDay, restDays } = documents.library.shelf.defaults.testing;
    const oneDay = planFor(at("2026-02-22"));
    expect(restDays).toBe(1);
    expect(oneDay.atMostTests).toBe(perDay);
    expect(oneDay.tests.length).toBeLessThanOrEqual(perDay!);
    expect(planFor(at(TODAY)).tests).toEqual([]);
  });

  it("tests no garment of which there is no spare piece, and a garment with two pieces once", () => {
    expect(planFor(withSpare(documents, 0)).tests).toEqual([]);
    const lines = planFor(withSpare(documents, 2)).tests.map(({ lineId, placeId }) => `${lineId} ${placeId}`);
    expect(new Set(lines).size).toBe(lines.length);
    expect(lines.length).toBeGreaterThan(3);
  });

  it("is planned anew by an answer: the forest that was read is no longer the dearest to skip", () => {
    const on = withForestChosen(documents);
    const read = withFirstOff(on, line, place, { deltaL: -7.9, pairCount: 6 }, learnedFrom(on.library));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const after = planFor(read.documents);
    expect(after.tests[0]?.lineId).not.toBe(line.id);
    expect(after.avoidable).toBeLessThan(plan.avoidable);
  });
});
