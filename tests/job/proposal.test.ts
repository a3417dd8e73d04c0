/** A proposal that is taken over: what it adds, what it uses, and what it leaves alone. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { changeMix } from "../../src/job/edits/mixes.ts";
import { changePlace } from "../../src/job/edits/places.ts";
import { applyProposal, type ProposedChange } from "../../src/job/edits/proposal.ts";
import { chosenCandidate, mixOf } from "../../src/job/lookup.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleId, ids } from "./exampleDocuments.ts";

const NEW_RECIPE = [
  { itemId: ids.clear, massFraction: 0.99 },
  { itemId: ids.black, massFraction: 0.01 },
];

function change(lineId: string, part: Partial<ProposedChange> = {}): ProposedChange {
  const number = lineId === ids.line ? 900 : 910;
  return {
    lineId,
    recipe: NEW_RECIPE,
    mixName: "Clear, more black",
    setUpId: ids.setUp,
    newMixId: exampleId(number),
    newCandidateId: exampleId(number + 1),
    ...part,
  };
}

const applied = (documents: Documents, ...changes: ProposedChange[]) =>
  applyProposal(documents, ids.place, changes);

const columns = (documents: Documents) => documents.job.places[0]!.candidates.map(({ id }) => id);
const chosen = ({ job }: Documents, lineId: string) => chosenCandidate(job, lineId, ids.place)?.id;

describe("a proposal that is taken over", () => {
  it("adds the mix and the column that are missing, and chooses it", () => {
    const after = applied(exampleDocuments(), change(ids.line));
    expect(mixOf(after.job, exampleId(900))).toEqual({
      id: exampleId(900),
      name: "Clear, more black",
      recipe: NEW_RECIPE,
      clothCoverFraction: null,
    });
    expect(columns(after)).toEqual([ids.candidate, ids.otherCandidate, exampleId(901)]);
    expect([chosen(after, ids.line), chosen(after, ids.otherLine)]).toEqual([exampleId(901), undefined]);
    expect(validateDocuments(after)).toEqual([]);
  });

  it("makes one mix and one column of a recipe that two lines are to have, written in whatever order", () => {
    const recipe = [...NEW_RECIPE.toReversed(), { itemId: ids.red, massFraction: 0 }];
    const after = applied(exampleDocuments(), change(ids.line), change(ids.otherLine, { recipe }));
    expect(after.job.mixes).toHaveLength(3);
    expect(columns(after)).toHaveLength(3);
    expect(chosen(after, ids.otherLine)).toBe(chosen(after, ids.line));
  });

  it("makes two columns of one mix where two lines are to have it through different set-ups", () => {
    const after = applied(
      exampleDocuments(),
      change(ids.line),
      change(ids.otherLine, { setUpId: ids.otherSetUp }),
    );
    expect(after.job.mixes).toHaveLength(3);
    expect(columns(after)).toEqual([ids.candidate, ids.otherCandidate, exampleId(901), exampleId(911)]);
    expect(after.job.places[0]!.candidates.slice(2).map(({ mixId }) => mixId)).toEqual([
      exampleId(900),
      exampleId(900),
    ]);
  });

  it("uses the column of the place that already prints it, under its own name", () => {
    const documents = exampleDocuments();
    const recipe = documents.job.mixes[1]!.recipe.toReversed();
    const after = applied(documents, change(ids.line, { recipe }));
    expect(after.job.mixes).toBe(documents.job.mixes);
    expect(after.job.places).toBe(documents.job.places);
    expect(chosen(after, ids.line)).toBe(ids.otherCandidate);
  });

  it("uses the second of two mixes of one recipe where the place has its column", () => {
    const documents = exampleDocuments();
    const { recipe } = documents.job.mixes[1]!;
    const twice = changeMix(documents, ids.mix, { recipe });
    const onlySecond = {
      ...twice,
      job: {
        ...twice.job,
        places: twice.job.places.map((place) => ({ ...place, candidates: place.candidates.slice(1) })),
      },
    };
    expect(chosen(applied(onlySecond, change(ids.line, { recipe })), ids.line)).toBe(ids.otherCandidate);
  });

  it("does not use a mix that covers the cloth by its own figure", () => {
    const documents = changeMix(exampleDocuments(), ids.otherMix, { clothCoverFraction: 0.3 });
    const { recipe } = documents.job.mixes[1]!;
    const after = applied(documents, change(ids.line, { recipe }));
    expect(chosen(after, ids.line)).toBe(exampleId(901));
    expect(mixOf(after.job, exampleId(900))?.clothCoverFraction).toBeNull();
  });

  it("uses such a mix where it was meant and still has the recipe", () => {
    const documents = changeMix(exampleDocuments(), ids.otherMix, { clothCoverFraction: 0.3 });
    const { recipe } = documents.job.mixes[1]!;
    const meant = change(ids.line, { recipe, jobMixId: ids.otherMix });
    expect(chosen(applied(documents, meant), ids.line)).toBe(ids.otherCandidate);
    const changed = changeMix(documents, ids.otherMix, { recipe: [{ itemId: ids.clear, massFraction: 1 }] });
    expect(chosen(applied(changed, meant), ids.line)).toBe(exampleId(901));
  });

  it("changes nothing when it is taken over again", () => {
    const once = applied(exampleDocuments(), change(ids.line), change(ids.otherLine));
    expect(applied(once, change(ids.line), change(ids.otherLine))).toEqual(once);
  });

  it.each<[string, Partial<ProposedChange>, string]>([
    ["a line that does not exist", { lineId: exampleId(999) }, "line must exist"],
    ["a set-up that does not exist", { setUpId: exampleId(999) }, "set-up must exist"],
    [
      "an ink that does not exist",
      { recipe: [{ itemId: exampleId(999), massFraction: 1 }] },
      "component must",
    ],
    ["a recipe that does not sum to 1", { recipe: [{ itemId: ids.clear, massFraction: 0.9 }] }, "mix-sum"],
    ["the id of a column that exists", { newCandidateId: ids.candidate }, "new id"],
  ])("refuses %s", (_, part, message) => {
    expect(() => applied(exampleDocuments(), change(ids.line, part))).toThrow(message);
  });

  it("refuses a line that is not printed there", () => {
    const documents = changePlace(exampleDocuments(), ids.place, { lineIds: [ids.otherLine] });
    expect(() => applied(documents, change(ids.line))).toThrow("printed at the place");
  });
});
