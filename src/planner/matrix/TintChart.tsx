/** How much darker or lighter with how much tint: the line, its nine-in-ten band, the target, the present tint. */
import { scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import { bandWords, changeWords } from "../words/predictionSentences.ts";
import { Axes, CHART } from "./chartFrame.tsx";

interface Props {
  readonly curve: readonly TintCurvePoint[];
  readonly band: Band;
  readonly tintName: string;
  readonly presentFraction: number;
  readonly presentDeltaL: number;
}

/** Room kept around the curve, in L*. */
const LEAST_SPAN = 2;

/** The chart in words. */
export function tintSummary({ curve, band, tintName }: Pick<Props, "curve" | "band" | "tintName">): string {
  const first = curve[0];
  const last = curve.at(-1);
  if (first === undefined || last === undefined) return "";
  return `${changeWords(first.deltaL)} with ${percentWords(first.massFraction)} ${tintName}, ${changeWords(last.deltaL)} with ${percentWords(last.massFraction)}; the target is ${bandWords(band)}.`;
}

export function TintChart({ curve, band, tintName, presentFraction, presentDeltaL }: Props) {
  const start = curve[0]?.massFraction ?? 0;
  const end = curve.at(-1)?.massFraction ?? 0;
  if (end === start) return null;
  const low = Math.min(0, band.deltaL - band.tolerance, ...curve.map(({ deltaL5 }) => deltaL5));
  const high = Math.max(0, band.deltaL + band.tolerance, ...curve.map(({ deltaL95 }) => deltaL95));
  const span = Math.max(LEAST_SPAN, high - low);
  const isDarker = Math.abs(low) >= Math.abs(high);
  const x = scaleLinear([start, end], [CHART.left, CHART.width - CHART.right]);
  const y = scaleLinear(isDarker ? [high - span, high] : [low, low + span], [
    CHART.height - CHART.bottom,
    CHART.top,
  ]);
  const spread = area<TintCurvePoint>()
    .x(({ massFraction }) => x(massFraction))
    .y0(({ deltaL5 }) => y(deltaL5))
    .y1(({ deltaL95 }) => y(deltaL95))
    .curve(curveMonotoneX);
  const middle = line<TintCurvePoint>()
    .x(({ massFraction }) => x(massFraction))
    .y(({ deltaL }) => y(deltaL))
    .curve(curveMonotoneX);
  const upper = y(band.deltaL + band.tolerance);
  const lower = y(band.deltaL - band.tolerance);
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Change against ${tintName}. ${tintSummary({ curve, band, tintName })}`}
    >
      <rect
        x={CHART.left}
        width={CHART.width - CHART.left - CHART.right}
        y={upper}
        height={Math.max(1, lower - upper)}
        className="chart__target"
      />
      <path d={spread([...curve]) ?? ""} className="chart__spread" />
      <Axes
        x={x}
        y={y}
        xTicks={x.ticks(4)}
        yTicks={y.ticks(5)}
        xWords={percentWords}
        yWords={(value) => String(Math.abs(value))}
        xTitle={`${tintName} in the mix`}
        yTitle={isDarker ? "darker by, downwards" : "lighter by, upwards"}
      />
      <text x={CHART.width - CHART.right - 4} y={upper + 13} textAnchor="end">
        target
      </text>
      <path d={middle([...curve]) ?? ""} className="chart__line" />
      {presentFraction >= start && presentFraction <= end && (
        <g className="chart__present">
          <line
            x1={x(presentFraction)}
            x2={x(presentFraction)}
            y1={CHART.top}
            y2={CHART.height - CHART.bottom}
            className="chart__mark"
          />
          <circle cx={x(presentFraction)} cy={y(presentDeltaL)} r={4} className="chart__point" />
          <text
            x={x(presentFraction) + (presentFraction > (start + end) / 2 ? -6 : 6)}
            y={CHART.height - CHART.bottom - 6}
            textAnchor={presentFraction > (start + end) / 2 ? "end" : "start"}
            className="chart__strong"
          >
            now
          </text>
        </g>
      )}
    </svg>
  );
}
