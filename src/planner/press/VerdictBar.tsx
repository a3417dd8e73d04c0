/** Where a first-off lies: the target as a pale band, what the guard band leaves of it, the mean with its interval. */
import { scaleLinear } from "d3-scale";
import type { FirstOffVerdict } from "../../core/planning/decisions/firstOff.ts";
import type { Band } from "../../job/jobDocument.ts";
import { bandWords, changeWords } from "../words/predictionSentences.ts";
import { intervalWords } from "../words/pressSentences.ts";

interface Props {
  readonly verdict: FirstOffVerdict;
  readonly band: Pick<Band, "deltaL" | "tolerance">;
}

const SIZE = { width: 340, height: 96, side: 16, top: 30, bottom: 66 } as const;
/** Tolerances kept in sight on each side of the middle. */
const LEAST_REACH = 1.8;
/** A label that would start or end outside the picture is turned to the other side. */
const EDGE_PX = 56;

export function VerdictBar({ verdict, band }: Props) {
  const { mean, interval, acceptance } = verdict;
  // The wanted direction runs to the right, as on the cloth of a swatch: the strong end is there.
  const sign = band.deltaL > 0 ? 1 : -1;
  const middle = sign * band.deltaL;
  const [low, high] = [middle - band.tolerance, middle + band.tolerance];
  const ends = [sign * interval.lower, sign * interval.upper, 0];
  const x = scaleLinear(
    [
      Math.min(middle - LEAST_REACH * band.tolerance, ...ends),
      Math.max(middle + LEAST_REACH * band.tolerance, ...ends),
    ],
    [SIZE.side, SIZE.width - SIZE.side],
  );
  const at = x(sign * mean);
  const guarded =
    acceptance === null ? null : [sign * acceptance.lower, sign * acceptance.upper].sort((a, b) => a - b);
  const anchor = at < EDGE_PX ? "start" : at > SIZE.width - EDGE_PX ? "end" : "middle";
  const middleY = (SIZE.top + SIZE.bottom) / 2;
  return (
    <svg
      className="chart press__bar"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={`${changeWords(mean)}, ${intervalWords(verdict)}; the target is ${bandWords(band)}.`}
    >
      <rect
        x={x(low)}
        y={SIZE.top}
        width={x(high) - x(low)}
        height={SIZE.bottom - SIZE.top}
        className="press__band"
      />
      {guarded !== null && (
        <rect
          x={x(guarded[0] ?? 0)}
          y={SIZE.top}
          width={x(guarded[1] ?? 0) - x(guarded[0] ?? 0)}
          height={SIZE.bottom - SIZE.top}
          className="press__guarded"
        />
      )}
      {[low, high].map((limit) => (
        <g key={limit}>
          <line x1={x(limit)} x2={x(limit)} y1={SIZE.top - 4} y2={SIZE.bottom + 4} className="chart__edge" />
          <text x={x(limit)} y={SIZE.bottom + 20} textAnchor="middle">
            {Math.abs(limit).toFixed(1)}
          </text>
        </g>
      ))}
      <text x={x(middle)} y={SIZE.bottom + 20} textAnchor="middle" className="press__quiet">
        target
      </text>
      <line
        x1={x(sign * interval.lower)}
        x2={x(sign * interval.upper)}
        y1={middleY}
        y2={middleY}
        className="press__whisker"
      />
      <circle cx={at} cy={middleY} r={6} className="chart__point" />
      <text x={at} y={SIZE.top - 12} textAnchor={anchor} className="chart__strong">
        {changeWords(mean)}
      </text>
    </svg>
  );
}
