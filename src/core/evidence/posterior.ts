/** What is known after all records: the most probable values and their Laplace covariance, kept in blocks by style. */
import type { ClothCache } from "./cell.ts";
import type { InkCache } from "./inkFilms.ts";
import type { Lesson } from "./lesson.ts";
import type { PriorScales } from "./priorScales.ts";
import type { EvidenceRecord, GoodsInRecord } from "./record.ts";
import type { StyleBlock } from "./styleBlock.ts";
import type { Unknown } from "./unknown.ts";

export interface Posterior {
  readonly scales: PriorScales;
  readonly records: readonly EvidenceRecord[];
  readonly goodsIn: readonly GoodsInRecord[];
  /** Records that are kept out until someone answers, by id. */
  readonly setAside: ReadonlySet<string>;
  /** What teaches, in the order of the records, goods-in checks last. */
  readonly lessons: readonly Lesson[];
  readonly blocks: readonly StyleBlock[];
  readonly blockOfStyle: ReadonlyMap<string, number>;
  /** Unknowns that the shop shares: fibres, bases, colourants, set-ups. */
  readonly shared: readonly Unknown[];
  readonly sharedPositions: ReadonlyMap<string, number>;
  readonly sharedValues: Float64Array;
  readonly sharedCovariance: Float64Array;
  readonly sharedLnDeterminant: number;
  readonly iterationCount: number;
  readonly converged: boolean;
  /** Lots printed with a base, as `lotBaseKey`, and colourants that any record holds. */
  readonly printedLotBases: ReadonlySet<string>;
  readonly printedColourants: ReadonlySet<string>;
  readonly cloths: ClothCache;
  readonly inks: InkCache;
}

export const lotBaseKey = (lotKey: string, baseKey: string): string => `${lotKey}\u0001${baseKey}`;
