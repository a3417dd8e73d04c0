/** Change against tint before and after the test prints: the wide range of before, the range of now, the readings as points. */
import { scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import type { LotReading } from "../../job/recordBook/lotReadings.ts";
import { Axes, CHART } from "../matrix/chartFrame.tsx";
import { curveSentence } from "../words/curveSentences.ts";
import { percentWords } from "../words/garmentWords.ts";

interface Props {
  readonly curve: readonly TintCurvePoint[];
  /** Before any test print; empty where none taught. */
  readonly prior: readonly TintCurvePoint[];
  readonly points: readonly LotReading[];
  readonly band: Band;
  readonly tintName: string;
}

/** Room kept around the curves, in L*. */
const LEAST_SPAN = 2;

export function LearnedChart({ curve, prior, points, band, tintName }: Props) {
  const start = curve[0]?.massFraction ?? 0;
  const end = curve.at(-1)?.massFraction ?? 0;
  if (end === start) return null;
  const all = [...curve, ...prior];
  const read = points.map(({ deltaL }) => deltaL);
  const low = Math.min(0, band.deltaL - band.tolerance, ...read, ...all.map(({ deltaL5 }) => deltaL5));
  const high = Math.max(0, band.deltaL + band.tolerance, ...read, ...all.map(({ deltaL95 }) => deltaL95));
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
  const edge = (pick: (point: TintCurvePoint) => number) =>
    line<TintCurvePoint>()
      .x(({ massFraction }) => x(massFraction))
      .y((point) => y(pick(point)))
      .curve(curveMonotoneX);
  const upper = y(band.deltaL + band.tolerance);
  const lower = y(band.deltaL - band.tolerance);
  const lastPrior = prior.at(-1);
  const last = curve.at(-1);
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Change against ${tintName}, before and after the test prints. ${curveSentence(curve, prior, points)}`}
    >
      <rect
        x={CHART.left}
        width={CHART.width - CHART.left - CHART.right}
        y={upper}
        height={Math.max(1, lower - upper)}
        className="chart__target"
      />
      {prior.length > 0 && (
        <g className="tests__prior">
          <path d={edge(({ deltaL5 }) => deltaL5)([...prior]) ?? ""} />
          <path d={edge(({ deltaL95 }) => deltaL95)([...prior]) ?? ""} />
        </g>
      )}
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
      <text x={CHART.left + 4} y={upper + 13}>
        target
      </text>
      <path d={edge(({ deltaL }) => deltaL)([...curve]) ?? ""} className="chart__line" />
      {points.map(({ record, massFraction, deltaL }) => (
        <circle key={record.id} cx={x(massFraction)} cy={y(deltaL)} r={4.5} className="tests__reading" />
      ))}
      {lastPrior !== undefined && (
        <text x={CHART.width - CHART.right - 4} y={y(lastPrior.deltaL95) - 6} textAnchor="end">
          before any print
        </text>
      )}
      {last !== undefined && (
        <text x={CHART.width - CHART.right - 4} y={y(last.deltaL) - 6} textAnchor="end">
          now
        </text>
      )}
    </svg>
  );
}
