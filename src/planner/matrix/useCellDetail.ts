/** Everything about the cell that is looked at, with its answer to other amounts of tint. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import type { PredictionEngine } from "../../engine/predictionEngine.ts";
import type { CellDetail, CellRequest } from "../../engine/protocol.ts";
import { recipeWithTint } from "../../job/edits/recipe.ts";
import type { Band } from "../../job/jobDocument.ts";
import type { Mix } from "../../job/mixDocument.ts";
import { inkMixFor } from "../../job/predictionInputs.ts";
import type { ScreenGamut } from "../../job/screenColour.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { useLessons } from "../lessons.tsx";
import { type MatrixCandidate, type MatrixLine, matrixColumn, matrixRow } from "./matrixInputs.ts";
import { largestTintFraction, tintFraction, tintOf } from "./tintEdit.ts";

/** Points of the tint curve: few enough for a drag, enough for a smooth line. */
const CURVE_POINT_COUNT = 17;
/** The curve ends at the tint ladder's end, or half as far again as the present tint. */
const BEYOND_PRESENT = 1.5;

type Tints = CellRequest["tints"];

function tintsOf(mix: Mix, shelf: Shelf): Tints {
  const colourant = tintOf(mix, shelf);
  if (colourant === null) return [];
  const ladderEnd = shelf.defaults.tintLadder.at(-1) ?? 0.01;
  const present = tintFraction(mix, colourant.id);
  // Beyond the ladder the scale grows in whole steps of the ladder's end, so that it stands still under a small drag.
  const wanted =
    present <= ladderEnd ? ladderEnd : Math.ceil((present * BEYOND_PRESENT) / ladderEnd) * ladderEnd;
  const end = Math.min(wanted, largestTintFraction(mix, shelf, colourant));
  const tints: Tints[number][] = [];
  for (let point = 0; point < CURVE_POINT_COUNT; point++) {
    const massFraction = (end * point) / (CURVE_POINT_COUNT - 1);
    try {
      const recipe = recipeWithTint(mix.recipe, shelf, colourant.id, massFraction);
      const ink = inkMixFor({ ...mix, recipe }, shelf);
      const itemKeys = recipe.map(({ itemId }) => itemId);
      if (ink.ok) tints.push({ massFraction, mix: ink.mix, itemKeys });
    } catch (error) {
      // No room for the bases at this amount: the curve ends before it.
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return tints;
}

interface Subject {
  readonly line: MatrixLine | null;
  readonly column: MatrixCandidate | null;
  readonly viewing: Viewing;
  readonly band: Band;
  readonly gamut: ScreenGamut;
  readonly shelf: Shelf;
}

export interface ShownDetail {
  readonly detail: CellDetail;
  /** What it was computed for. */
  readonly lineId: string;
  readonly candidateId: string;
}

export interface CellDetailState {
  /** Null until the first answer; afterwards the last answer, until the next is there. */
  readonly shown: ShownDetail | null;
  readonly hasFailed: boolean;
}

const NOTHING: CellDetailState = { shown: null, hasFailed: false };

export function useCellDetail(engine: PredictionEngine, subject: Subject | null): CellDetailState {
  const [state, setState] = useState<CellDetailState>(NOTHING);
  const line = subject?.line ?? null;
  const column = subject?.column ?? null;
  const { viewing, band, gamut, shelf } = subject ?? {};
  const { lessons } = useLessons();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was learned since is a reason to ask anew
  const request = useMemo<CellRequest | null>(() => {
    const row = line === null ? null : matrixRow(line);
    const asked = column === null ? null : matrixColumn(column);
    if (row === null || asked === null || !column?.mix) return null;
    if (!viewing || !band || !gamut || !shelf) return null;
    return {
      row,
      column: asked,
      viewing,
      band,
      gamut,
      tints: tintsOf(column.mix, shelf),
    };
  }, [line, column, viewing, band, gamut, shelf, lessons]);
  const latest = useRef<CellRequest | null>(null);
  useEffect(() => {
    latest.current = request;
    if (request === null) return;
    engine.predictCell(request).then(
      (detail) => {
        if (detail === null || latest.current === null) return;
        const { lineId } = request.row;
        const { candidateId } = request.column;
        setState({ shown: { detail, lineId, candidateId }, hasFailed: false });
      },
      () => {
        if (latest.current === request) setState({ shown: null, hasFailed: true });
      },
    );
    return () => {
      latest.current = null;
    };
  }, [engine, request]);
  return request === null ? NOTHING : state;
}
