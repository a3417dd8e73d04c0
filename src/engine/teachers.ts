/** The records that taught most about one cell, as few as a sentence can name. */
import { influence } from "../core/evidence/influence.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import { evidencePrintOf } from "./cellPrediction.ts";
import type { Teacher, TeachersRequest } from "./protocol.ts";

const MOST_NAMED = 3;
/** A record with less than this part of what the records taught is not named. Invented default. */
const SMALLEST_SHARE = 0.05;

/** Teachers of a cell, first the one that taught most; empty where nothing did or the cell has no keys. */
export function teachersOf(posterior: Posterior, request: TeachersRequest): readonly Teacher[] {
  const print = evidencePrintOf(request.row, request.column);
  if (print === null) return [];
  return [...influence(posterior, print, request.viewing)]
    .filter(({ share }) => share >= SMALLEST_SHARE)
    .sort((one, other) => other.share - one.share)
    .slice(0, MOST_NAMED);
}
