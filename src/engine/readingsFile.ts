/** A colour-measurement file on its way to a record: read, asked about, paired, taken. Loaded when a file is opened. */
import { type Answers, answerAsked } from "../exchange/readings/answerAsked.ts";
import { looksLikeCgats } from "../exchange/readings/cgatsTables.ts";
import { findHeadings } from "../exchange/readings/csv.ts";
import { applyMatching, type ColumnMatching, guessColumns } from "../exchange/readings/csvColumns.ts";
import { decodeText } from "../exchange/readings/decodeText.ts";
import { type PairProposal, pairUp } from "../exchange/readings/pairUp.ts";
import {
  type ConfirmedPair,
  type PairsOutcome,
  readingsOfPairs,
} from "../exchange/readings/readingsOfPairs.ts";
import { readReadingsFile } from "../exchange/readings/readReadingsFile.ts";
import type { ReadingsResult, ReflectanceScale } from "../exchange/readings/readSample.ts";
import { matchingFrom, storedMatching } from "../exchange/readings/storedMatching.ts";
import type { ColumnMatching as StoredMatching } from "../job/shopDefaultsDocument.ts";

/** A file and all that was answered about it so far. It is read anew each time: nothing of it is kept in the worker. */
export interface ReadingsRequest {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Column matchings that the shop remembers; the first that fits the headings is taken. */
  readonly remembered: readonly StoredMatching[];
  /** Put right by hand; null: a remembered one, else what the headings suggest. */
  readonly matching: ColumnMatching | null;
  readonly scale: ReflectanceScale | null;
  readonly answers: Answers;
  /** Null: what is proposed. */
  readonly pairs: readonly ConfirmedPair[] | null;
  readonly pieceCount: number;
}

export interface ReadingsAnswer {
  readonly result: ReadingsResult;
  /** The columns of a plain table, to be put right; null for a file that states its own. */
  readonly matching: ColumnMatching | null;
  /** The remembered matching that was taken; null where none fitted. */
  readonly rememberedName: string | null;
  /** `matching` as the shop's defaults keep it; null where there is none to keep. */
  readonly toRemember: StoredMatching | null;
  readonly proposal: PairProposal | null;
  /** What the pairs come to; null as long as the file cannot be read. */
  readonly outcome: PairsOutcome | null;
}

interface Matched {
  readonly matching: ColumnMatching | null;
  readonly name: string | null;
}

/** The matching to read a plain table by. */
function matchingFor(text: string, { matching, remembered }: ReadingsRequest): Matched {
  if (matching !== null) return { matching, name: null };
  const found = findHeadings(text, null);
  for (const one of remembered) {
    const known = matchingFrom(one);
    if (known === null) continue;
    const headings = findHeadings(text, known)?.headings ?? found?.headings;
    if (headings === undefined || applyMatching(known, headings).missing.length > 0) continue;
    return { matching: known, name: one.name };
  }
  return { matching: found === null ? null : guessColumns(found.headings), name: null };
}

/** Everything about the file under what was answered; never throws for what is inside it. */
export async function readingsAnswer(request: ReadingsRequest): Promise<ReadingsAnswer> {
  const { name, bytes, scale, answers, pairs, pieceCount } = request;
  const decoded = decodeText(bytes);
  const isTable = decoded.ok && !decoded.text.trimStart().startsWith("<") && !looksLikeCgats(decoded.text);
  const matched = isTable ? matchingFor(decoded.text, request) : { matching: null, name: null };
  const { result } = await readReadingsFile(name, bytes, matched.matching, { scale });
  const base = {
    result,
    matching: matched.matching,
    rememberedName: matched.name,
    toRemember: matched.matching === null ? null : storedMatching(name, matched.matching),
  };
  if (!result.ok) return { ...base, proposal: null, outcome: null };
  const samples = answerAsked(result.samples, answers);
  const proposal = pairUp(samples);
  const outcome = readingsOfPairs(samples, pairs ?? proposal.pairs, pieceCount);
  return { ...base, result: { ...result, samples }, proposal, outcome };
}
