/**
 * The order of some stops with the least cost of going from each to the next, start and end free.
 * M. Held & R. M. Karp, "A dynamic programming approach to sequencing problems", J. SIAM 10 (1962) 196-210 (cited from
 * memory): exact, time n^2 2^n. Beyond twelve stops: nearest neighbour from every start, then moves of segments until
 * none helps, which is not proven to be the least.
 */

/** Up to this many stops the order is exact: 12^2 2^12 is about 600,000 steps. */
export const EXACT_STOP_COUNT = 12;

export interface StopOrder {
  /** Positions in the input. */
  readonly order: readonly number[];
  readonly cost: number;
  /** Whether no other order costs less. */
  readonly proven: boolean;
}

type Costs = readonly (readonly number[])[];

/**
 * The cheapest order of all stops; among equals one that starts early in the input.
 * @param costs costs[from][to] >= 0, square; the diagonal is not read.
 * @throws RangeError for a table that is not square or a cost that is negative or not finite.
 */
export function shortestOrder(costs: Costs): StopOrder {
  requireSquare(costs);
  if (costs.length === 0) return { order: [], cost: 0, proven: true };
  const order = costs.length <= EXACT_STOP_COUNT ? heldKarp(costs) : improvedNeighbours(costs);
  return { order, cost: costOf(costs, order), proven: costs.length <= EXACT_STOP_COUNT };
}

/** Cost of going through the stops in `order`. */
export function costOf(costs: Costs, order: readonly number[]): number {
  let cost = 0;
  for (let i = 1; i < order.length; i++) cost += costs[order[i - 1]!]![order[i]!]!;
  return cost;
}

/** cheapest[set][first] = least cost of going through all of `set` beginning with `first`. */
function heldKarp(costs: Costs): number[] {
  const n = costs.length;
  const full = 2 ** n - 1;
  const cheapest = new Float64Array((full + 1) * n).fill(Infinity);
  const next = new Int8Array((full + 1) * n).fill(-1);
  for (let set = 1; set <= full; set++) {
    for (let first = 0; first < n; first++) {
      if ((set & (1 << first)) === 0) continue;
      const rest = set ^ (1 << first);
      const at = set * n + first;
      if (rest === 0) cheapest[at] = 0;
      for (let second = 0; second < n; second++) {
        if ((rest & (1 << second)) === 0) continue;
        const cost = costs[first]![second]! + cheapest[rest * n + second]!;
        if (cost < cheapest[at]!) {
          cheapest[at] = cost;
          next[at] = second;
        }
      }
    }
  }
  let first = 0;
  for (let i = 1; i < n; i++) if (cheapest[full * n + i]! < cheapest[full * n + first]!) first = i;
  const order: number[] = [];
  for (let set = full; first >= 0; ) {
    order.push(first);
    const following = next[set * n + first]!;
    set ^= 1 << first;
    first = following;
  }
  return order;
}

function improvedNeighbours(costs: Costs): number[] {
  let best: number[] = [];
  let least = Infinity;
  for (let start = 0; start < costs.length; start++) {
    const order = withSegmentsMoved(costs, nearestNeighbours(costs, start));
    const cost = costOf(costs, order);
    if (cost < least) {
      least = cost;
      best = order;
    }
  }
  return best;
}

function nearestNeighbours(costs: Costs, start: number): number[] {
  const order = [start];
  const left = new Set(costs.keys());
  left.delete(start);
  while (left.size > 0) {
    const from = costs[order.at(-1)!]!;
    let nearest = -1;
    for (const to of left) if (nearest < 0 || from[to]! < from[nearest]!) nearest = to;
    order.push(nearest);
    left.delete(nearest);
  }
  return order;
}

/** Moves segments of up to three stops elsewhere while that lowers the cost. */
function withSegmentsMoved(costs: Costs, start: number[]): number[] {
  let order = start;
  let cost = costOf(costs, order);
  for (let improved = true; improved; ) {
    improved = false;
    for (let length = 1; length <= 3; length++) {
      for (let from = 0; from + length <= order.length; from++) {
        const segment = order.slice(from, from + length);
        const rest = [...order.slice(0, from), ...order.slice(from + length)];
        for (let to = 0; to <= rest.length; to++) {
          const moved = [...rest.slice(0, to), ...segment, ...rest.slice(to)];
          const movedCost = costOf(costs, moved);
          if (movedCost < cost - 1e-9) {
            order = moved;
            cost = movedCost;
            improved = true;
            break;
          }
        }
      }
    }
  }
  return order;
}

function requireSquare(costs: Costs): void {
  costs.forEach((row, from) => {
    if (row.length !== costs.length) {
      throw new RangeError(`costs must be square: ${costs.length} rows; got ${row.length} in row ${from}`);
    }
    row.forEach((cost, to) => {
      if (from !== to && !(cost >= 0 && cost < Infinity)) {
        throw new RangeError(`costs must be >= 0 and finite; got ${cost}`);
      }
    });
  });
}
