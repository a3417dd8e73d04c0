/** How one print moved while it rested: its change of L* against the hours since printing, and the same in words. */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { PrintSeries, SeriesReading } from "../../job/recordBook/printSeries.ts";
import { Axes, CHART } from "../matrix/chartFrame.tsx";
import { driftSentence } from "../words/driftWords.ts";
import { restWords } from "../words/testsWords.ts";

/** Room kept around the readings, in L*. */
const LEAST_SPAN = 2;
const HOURS = [0, 1, 4, 24, 48, 72, 96, 168, 336];
/** Ticks of hours closer than this part of the axis run into each other. */
const LEAST_TICK_GAP = 0.12;

/** Hours that stand far enough apart on an axis that ends at `last`. */
function hourTicks(last: number): number[] {
  const ticks: number[] = [];
  for (const hour of HOURS.filter((one) => one <= last)) {
    const before = ticks.at(-1);
    if (before === undefined || (hour - before) / last >= LEAST_TICK_GAP) ticks.push(hour);
  }
  return ticks;
}

interface Point {
  readonly hours: number;
  readonly deltaL: number;
}

const pointsOf = (readings: readonly SeriesReading[]): Point[] =>
  readings.flatMap(({ restHours, deltaL }) => (deltaL === null ? [] : [{ hours: restHours, deltaL }]));

export function DriftChart({ series }: { readonly series: PrintSeries }) {
  const points = pointsOf(series.resting);
  if (points.length < 2) return null;
  const last = Math.max(...points.map(({ hours }) => hours));
  const values = points.map(({ deltaL }) => deltaL);
  const middle = (Math.min(...values) + Math.max(...values)) / 2;
  const span = Math.max(LEAST_SPAN, (Math.max(...values) - Math.min(...values)) * 1.4);
  const x = scaleLinear([0, last * 1.04], [CHART.left, CHART.width - CHART.right]);
  const y = scaleLinear([middle - span / 2, middle + span / 2], [CHART.height - CHART.bottom, CHART.top]);
  const path = line<Point>()
    .x(({ hours }) => x(hours))
    .y(({ deltaL }) => y(deltaL));
  const isDarker = middle < 0;
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Change against hours since printing. ${driftSentence(series) ?? ""}`}
    >
      <Axes
        x={x}
        y={y}
        xTicks={hourTicks(last)}
        yTicks={y.ticks(5)}
        xWords={(hours) => restWords(hours)}
        yWords={(value) => Math.abs(value).toFixed(1)}
        xTitle="since printing"
        yTitle={isDarker ? "darker by, downwards" : "lighter by, upwards"}
      />
      <path d={path(points) ?? ""} className="chart__line chart__line--thin" />
      {points.map(({ hours, deltaL }) => (
        <circle key={hours} cx={x(hours)} cy={y(deltaL)} r={4} className="chart__point" />
      ))}
    </svg>
  );
}
