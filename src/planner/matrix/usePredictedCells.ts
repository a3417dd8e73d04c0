/**
 * The predicted cells of the matrix. One request at a time: while one is on its way the newest wish waits, so that a
 * drag never starves, and the last figures stay until newer ones are there.
 */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import type { TargetBand } from "../../core/prediction/inputs.ts";
import type { PredictionEngine } from "../../engine/predictionEngine.ts";
import type { Lessons, MatrixCell, MatrixColumn, MatrixRequest, MatrixRow } from "../../engine/protocol.ts";
import { cellKey } from "../../engine/protocol.ts";
import type { ScreenGamut } from "../../job/screenColour.ts";
import { type MatrixCandidate, type MatrixLine, matrixColumn, matrixRow } from "./matrixInputs.ts";

/** Rows asked for at once beyond those in sight; keeps each answer short. */
const ROWS_AT_ONCE = 48;
/** An engine that answers nothing so often in a row has been closed. */
const MOST_UNANSWERED = 5;

export interface PredictedCells {
  readonly cells: ReadonlyMap<string, MatrixCell>;
  /** The engine failed; its words. */
  readonly failure: string | null;
}

interface Wanted {
  readonly lines: readonly MatrixLine[];
  readonly candidates: readonly MatrixCandidate[];
  readonly viewing: Viewing;
  readonly band: TargetBand;
  readonly gamut: ScreenGamut;
  /** What the engine had learned when it was asked. */
  readonly lessons: Lessons | null;
  /** Rows in sight come first. */
  readonly inSight: { readonly first: number; readonly last: number };
}

/** What a cell was computed from; while these are the same objects the cell holds. */
type Basis = readonly unknown[];

function basisOf(line: MatrixLine, column: MatrixCandidate, { viewing, gamut, lessons }: Wanted): Basis {
  const { band } = line;
  return [
    line.garment,
    column.inkMix,
    column.application,
    viewing.illuminant,
    viewing.observer,
    band.deltaL,
    band.tolerance,
    band.hueLimit,
    gamut,
    lessons,
  ];
}

const isSame = (one: Basis | undefined, other: Basis) =>
  one?.every((thing, index) => thing === other[index]) ?? false;

/** The next request: rows with a cell that is missing or stale, those in sight first; null where all is known. */
function nextRequest(wanted: Wanted, known: ReadonlyMap<string, Basis>): MatrixRequest | null {
  const columns = wanted.candidates.flatMap((column): MatrixColumn[] => {
    const asked = matrixColumn(column);
    return asked === null ? [] : [asked];
  });
  if (columns.length === 0) return null;
  const isOpen = (line: MatrixLine, column: MatrixCandidate) =>
    line.garment !== null &&
    column.inkMix !== null &&
    column.application !== null &&
    !isSame(known.get(cellKey(line.line.id, column.candidate.id)), basisOf(line, column, wanted));
  const { first, last } = wanted.inSight;
  const seen = wanted.lines.slice(first, last + 1);
  const unseen = [...wanted.lines.slice(0, first), ...wanted.lines.slice(last + 1)];
  for (const lines of [seen, unseen]) {
    const open = lines.filter((line) => wanted.candidates.some((column) => isOpen(line, column)));
    if (open.length === 0) continue;
    const asked = open.slice(0, Math.max(ROWS_AT_ONCE, lines === seen ? open.length : 0));
    const stale = new Set(
      wanted.candidates
        .filter((column) => asked.some((line) => isOpen(line, column)))
        .map(({ candidate }) => candidate.id),
    );
    const rows = asked.flatMap((line): MatrixRow[] => {
      const row = matrixRow(line);
      return row === null ? [] : [row];
    });
    return {
      rows,
      columns: columns.filter(({ candidateId }) => stale.has(candidateId)),
      viewing: wanted.viewing,
      band: wanted.band,
      gamut: wanted.gamut,
    };
  }
  return null;
}

class CellDesk {
  private wanted: Wanted | null = null;
  private isAsking = false;
  private isClosed = false;
  private readonly bases = new Map<string, Basis>();
  private cells = new Map<string, MatrixCell>();

  constructor(
    private readonly engine: PredictionEngine,
    private readonly show: (predicted: PredictedCells) => void,
  ) {}

  want(wanted: Wanted): void {
    this.wanted = wanted;
    void this.ask();
  }

  close(): void {
    this.isClosed = true;
  }

  private async ask(): Promise<void> {
    if (this.isAsking) return;
    this.isAsking = true;
    try {
      for (let unanswered = 0; unanswered < MOST_UNANSWERED; ) {
        const wanted = this.wanted;
        const request = wanted === null || this.isClosed ? null : nextRequest(wanted, this.bases);
        if (wanted === null || request === null) return;
        const answer = await this.engine.predictMatrix(request);
        if (this.isClosed) return;
        if (answer === null) {
          // Someone else asked the engine in between.
          unanswered += 1;
          continue;
        }
        unanswered = 0;
        this.keep(answer, request, wanted);
      }
    } catch (error) {
      if (!this.isClosed) this.show({ cells: this.cells, failure: String(error) });
    } finally {
      this.isAsking = false;
    }
  }

  private keep(answer: ReadonlyMap<string, MatrixCell>, request: MatrixRequest, wanted: Wanted): void {
    this.cells = new Map(this.cells);
    const lines = new Map(wanted.lines.map((line) => [line.line.id, line]));
    const candidates = new Map(wanted.candidates.map((column) => [column.candidate.id, column]));
    for (const { lineId } of request.rows) {
      for (const { candidateId } of request.columns) {
        const key = cellKey(lineId, candidateId);
        const cell = answer.get(key);
        const line = lines.get(lineId);
        const column = candidates.get(candidateId);
        if (line === undefined || column === undefined) continue;
        this.bases.set(key, basisOf(line, column, wanted));
        if (cell !== undefined) this.cells.set(key, cell);
      }
    }
    this.show({ cells: this.cells, failure: null });
  }
}

export function usePredictedCells(engine: PredictionEngine, wanted: Wanted): PredictedCells {
  const [predicted, setPredicted] = useState<PredictedCells>({ cells: new Map(), failure: null });
  const desk = useRef<CellDesk | null>(null);
  const { lines, candidates, viewing, band, gamut, lessons, inSight } = wanted;
  const { first, last } = inSight;
  const wish = useMemo<Wanted>(
    () => ({ lines, candidates, viewing, band, gamut, lessons, inSight: { first, last } }),
    [lines, candidates, viewing, band, gamut, lessons, first, last],
  );
  useEffect(() => {
    const opened = new CellDesk(engine, setPredicted);
    desk.current = opened;
    return () => opened.close();
  }, [engine]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new engine has a new desk, which has to be told
  useEffect(() => desk.current?.want(wish), [engine, wish]);
  return predicted;
}
