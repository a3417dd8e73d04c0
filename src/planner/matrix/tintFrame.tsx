/** What every chart of change against tint shares: its scales, its target, its nine-in-ten band and its axes. */
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, curveMonotoneX, line } from "d3-shape";
import type { ReactNode } from "react";
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import { Axes, CHART } from "./chartFrame.tsx";

/** From mass fraction of tint and change in L* to the picture; darker runs downwards. */
export interface TintScales {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly isDarker: boolean;
}

interface Props {
  readonly curve: readonly TintCurvePoint[];
  readonly band: Band;
  readonly tintName: string;
  readonly scales: TintScales;
  /** The side on which "target" is written. */
  readonly targetWordAt: "start" | "end";
  /** Drawn beneath the band. */
  readonly children?: ReactNode;
}

/** Room kept around the curves, in L*. */
const LEAST_SPAN = 2;

/** Scales that show `points` with their spread, the target and `readings` (changes in L*); none where the tint does not vary. */
export function tintScales(
  points: readonly TintCurvePoint[],
  band: Band,
  readings: readonly number[] = [],
): TintScales | undefined {
  const tints = points.map(({ massFraction }) => massFraction);
  const start = Math.min(...tints);
  const end = Math.max(...tints);
  if (!(end > start)) return undefined;
  const low = Math.min(0, band.deltaL - band.tolerance, ...readings, ...points.map(({ deltaL5 }) => deltaL5));
  const high = Math.max(
    0,
    band.deltaL + band.tolerance,
    ...readings,
    ...points.map(({ deltaL95 }) => deltaL95),
  );
  const span = Math.max(LEAST_SPAN, high - low);
  const isDarker = Math.abs(low) >= Math.abs(high);
  return {
    x: scaleLinear([start, end], [CHART.left, CHART.width - CHART.right]),
    y: scaleLinear(isDarker ? [high - span, high] : [low, low + span], [
      CHART.height - CHART.bottom,
      CHART.top,
    ]),
    isDarker,
  };
}

/** The path of one figure of the curve. */
export function tintPath(
  curve: readonly TintCurvePoint[],
  { x, y }: TintScales,
  pick: (point: TintCurvePoint) => number,
): string {
  const path = line<TintCurvePoint>()
    .x(({ massFraction }) => x(massFraction))
    .y((point) => y(pick(point)))
    .curve(curveMonotoneX);
  return path([...curve]) ?? "";
}

/** The target, the band of the curve and the axes. */
export function TintFrame({ curve, band, tintName, scales, targetWordAt, children }: Props) {
  const { x, y, isDarker } = scales;
  const spread = area<TintCurvePoint>()
    .x(({ massFraction }) => x(massFraction))
    .y0(({ deltaL5 }) => y(deltaL5))
    .y1(({ deltaL95 }) => y(deltaL95))
    .curve(curveMonotoneX);
  const upper = y(band.deltaL + band.tolerance);
  const lower = y(band.deltaL - band.tolerance);
  return (
    <>
      <rect
        x={CHART.left}
        width={CHART.width - CHART.left - CHART.right}
        y={upper}
        height={Math.max(1, lower - upper)}
        className="chart__target"
      />
      {children}
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
      <text
        x={targetWordAt === "start" ? CHART.left + 4 : CHART.width - CHART.right - 4}
        y={upper + 13}
        textAnchor={targetWordAt}
      >
        target
      </text>
    </>
  );
}
