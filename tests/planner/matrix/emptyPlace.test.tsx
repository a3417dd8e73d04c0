/** A print place without a mix says what to do next, and one press makes its matrix. */
import { screen, within } from "@testing-library/react";
import { beforeEach, expect, it } from "vitest";
import { removeCandidate } from "../../../src/job/edits/mixes.ts";
import { changePlace } from "../../../src/job/edits/places.ts";
import { demoDocuments, openMatrix, standInForTheBrowser } from "./matrixBench.tsx";

beforeEach(() => standInForTheBrowser());

function withoutMixes() {
  const documents = demoDocuments();
  const [place] = documents.job.places;
  if (place === undefined) throw new Error("the demo has no place");
  return place.candidates.reduce((now, { id }) => removeCandidate(now, place.id, id), documents);
}

const next = () => within(screen.getByRole("region", { name: "What to do next" }));

it("begins with the reference clear on one press: every garment is predicted with it", async () => {
  const { user, now, rows, cell } = await openMatrix(withoutMixes());
  await user.click(next().getByRole("button", { name: "Try Gloss clear with no tint" }));
  expect(now().job.places[0]?.candidates).toHaveLength(1);
  expect(rows()).toHaveLength(12);
  expect(cell(0, 0)).toHaveTextContent("1.0 darker");
});

it("begins with the shop's tint ladder on one press, weighed set-up and data sheet's limits minded, one undo", async () => {
  const { user, now, store } = await openMatrix(withoutMixes());
  await user.click(next().getByRole("button", { name: /^Try it with no, 0\.1/ }));
  const { job, library } = now();
  const ladder = library.shelf.defaults.tintLadder;
  expect(job.places[0]?.candidates).toHaveLength(ladder.length);
  const black = library.shelf.colourants.find(({ optics }) => optics.kind === "black");
  const tints = job.places[0]?.candidates.map(({ mixId }) => {
    const mix = job.mixes.find(({ id }) => id === mixId);
    return mix?.recipe.find(({ itemId }) => itemId === black?.id)?.massFraction ?? 0;
  });
  expect(tints).toEqual(ladder);
  store.getState().undo();
  expect(now().job.places[0]?.candidates).toHaveLength(0);
});

it("sends to the shelf where there is nothing to print with", async () => {
  const documents = withoutMixes();
  const { shelf } = documents.library;
  const bare = {
    ...documents,
    library: { ...documents.library, shelf: { ...shelf, bases: [], colourants: [], masters: [] } },
    job: { ...documents.job, mixes: [], choices: [], places: documents.job.places.slice(0, 1) },
  };
  await openMatrix(bare);
  expect(next().getByRole("link", { name: "Open the shelf" })).toHaveAttribute(
    "href",
    expect.stringMatching(/\/shelf\?.*tab=bases/),
  );
});

it("asks which garments are printed where none is", async () => {
  const documents = demoDocuments();
  const placeId = documents.job.places[0]?.id ?? "";
  const { user, now } = await openMatrix(changePlace(documents, placeId, { lineIds: [] }));
  await user.click(next().getByRole("button", { name: "Say which garments are" }));
  const panel = within(screen.getByRole("region", { name: "Print place, Front" }));
  await user.click(panel.getByRole("checkbox", { name: /Navy/ }));
  expect(now().job.places[0]?.lineIds).toEqual([documents.job.lines[0]?.id]);
});

it("changes size and cover of the place, and adds and removes places", async () => {
  const { user, now } = await openMatrix();
  await user.click(screen.getByRole("button", { name: /280 × 330/ }));
  const panel = () => within(screen.getByRole("region", { name: /^Print place, / }));
  await user.clear(panel().getByLabelText(/^Print width/));
  await user.type(panel().getByLabelText(/^Print width/), "250{Enter}");
  await user.clear(panel().getByLabelText(/^Part that carries ink/));
  await user.type(panel().getByLabelText(/^Part that carries ink/), "40{Enter}");
  expect(now().job.places[0]).toMatchObject({ widthMm: 250, coverFraction: 0.4 });
  await user.click(panel().getByRole("button", { name: "Add a print place" }));
  expect(now().job.places.map(({ name }) => name)).toEqual(["Front", "Back", "Left chest"]);
});
