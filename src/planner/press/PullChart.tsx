/** The pulls of a run in their order against the target: means with their intervals, and marks where something was changed. */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { Band } from "../../job/jobDocument.ts";
import { halfInterval95 } from "../../job/press/firstOffReading.ts";
import type { LoggedEntry } from "../../job/press/pressRun.ts";
import { Axes, CHART } from "../matrix/chartFrame.tsx";
import { bandWords, changeWords } from "../words/predictionSentences.ts";
import { ACTION_MARKS, ACTION_WORDS, changeMark } from "../words/pressSentences.ts";

interface Props {
  readonly points: readonly LoggedEntry[];
  readonly band: Pick<Band, "deltaL" | "tolerance">;
}

/** Tolerances kept in sight on each side of the middle. */
const LEAST_REACH = 1.3;
/** Room for the word under the lowest point, as a part of the axis. */
const WORD_ROOM = 0.14;
/** More numbers than this run into each other along the axis. */
const MOST_TICKS = 12;

interface Point {
  readonly at: number;
  readonly mean: number;
  readonly half: number;
  readonly logged: LoggedEntry;
}

/** What was passed is a filled point; all else a square with its word. */
const isGood = ({ entry }: LoggedEntry) => entry.said.action === "run";

/** A mark stands before it: its word begins right of the line. */
const isMarked = ({ entry }: LoggedEntry, at: number) => at > 0 && changeMark(entry.change) !== "";

function pointsOf(points: readonly LoggedEntry[]): Point[] {
  const read = points.flatMap((logged) => {
    const { reading } = logged;
    if (reading === null) return [];
    return [{ mean: reading.mean, half: halfInterval95(reading.standardUncertainty), logged }];
  });
  return read.map((point, at) => ({ ...point, at }));
}

/** The chart in words. */
export function pullSummary(points: readonly LoggedEntry[], band: Props["band"]): string {
  const words = pointsOf(points).map(({ mean, logged: { entry } }) => {
    const mark = changeMark(entry.change);
    const what = entry.kind === "first-off" ? "first-off" : "pull";
    return `${what}${mark === "" ? "" : ` after ${mark}`} ${changeWords(mean)}, ${ACTION_WORDS[entry.said.action].toLowerCase()}`;
  });
  return `Target ${bandWords(band)}. ${words.join("; ")}.`;
}

export function PullChart({ points, band }: Props) {
  const drawn = pointsOf(points);
  if (drawn.length < 2) return null;
  const ends = drawn.flatMap(({ mean, half }) => [mean - half, mean + half]);
  const reach = LEAST_REACH * band.tolerance;
  const [lowest, highest] = [Math.min(band.deltaL - reach, ...ends), Math.max(band.deltaL + reach, ...ends)];
  const y = scaleLinear(
    [lowest - WORD_ROOM * (highest - lowest), highest],
    [CHART.height - CHART.bottom, CHART.top],
  );
  const x = scaleLinear([-0.5, drawn.length - 0.5], [CHART.left, CHART.width - CHART.right]);
  const path = line<Point>()
    .x(({ at }) => x(at))
    .y(({ mean }) => y(mean));
  const every = Math.ceil(drawn.length / MOST_TICKS);
  // A new lot, pot or first-off is another level: the line is not drawn across.
  const stretches: Point[][] = [];
  for (const point of drawn) {
    if ((point.logged.point?.stretch ?? 1) === 1) stretches.push([]);
    stretches.at(-1)?.push(point);
  }
  return (
    <svg
      className="chart press__chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Pulls of the run. ${pullSummary(points, band)}`}
    >
      <rect
        x={CHART.left}
        width={CHART.width - CHART.left - CHART.right}
        y={y(band.deltaL + band.tolerance)}
        height={y(band.deltaL - band.tolerance) - y(band.deltaL + band.tolerance)}
        className="press__band"
      />
      <Axes
        x={x}
        y={y}
        xTicks={drawn.map(({ at }) => at).filter((at) => at % every === 0)}
        yTicks={y.ticks(5)}
        xWords={(at) => (drawn[at]?.logged.entry.kind === "first-off" ? "first" : String(at + 1))}
        yWords={(value) => Math.abs(value).toFixed(1)}
        xTitle="first-offs and pulls, in order"
        yTitle={band.deltaL > 0 ? "lighter by, upwards" : "darker by, downwards"}
      />
      <text x={CHART.left + 4} y={y(band.deltaL + band.tolerance) + 12}>
        target
      </text>
      {drawn.map(({ at, logged }) => {
        const { entry } = logged;
        if (!isMarked(logged, at)) return null;
        return (
          <g key={entry.id}>
            <line
              x1={x(at - 0.5)}
              x2={x(at - 0.5)}
              y1={CHART.top}
              y2={CHART.height - CHART.bottom}
              className="chart__mark"
            />
            <text x={x(at - 0.5) + 3} y={CHART.top + 9}>
              {changeMark(entry.change)}
            </text>
          </g>
        );
      })}
      {stretches.map((stretch) => (
        <path
          key={stretch[0]?.logged.entry.id}
          d={path(stretch) ?? ""}
          className="chart__line chart__line--thin"
        />
      ))}
      {drawn.map(({ at, mean, half, logged }) => (
        <g key={logged.entry.id}>
          <line
            x1={x(at)}
            x2={x(at)}
            y1={y(mean - half)}
            y2={y(mean + half)}
            className="press__whisker--thin"
          />
          {isGood(logged) ? (
            <circle cx={x(at)} cy={y(mean)} r={4} className="chart__point" />
          ) : (
            <>
              <rect x={x(at) - 4} y={y(mean) - 4} width={8} height={8} className="press__off" />
              <text
                x={isMarked(logged, at) ? x(at - 0.5) + 4 : x(at)}
                y={y(mean - half) + 12}
                textAnchor={isMarked(logged, at) ? "start" : "middle"}
                className="chart__strong"
              >
                {ACTION_MARKS[logged.entry.said.action]}
              </text>
            </>
          )}
        </g>
      ))}
    </svg>
  );
}
