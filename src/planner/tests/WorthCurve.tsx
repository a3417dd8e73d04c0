/** The share of the avoidable risk that is settled against the number of test prints made, the best first. */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import { Axes, CHART } from "../matrix/chartFrame.tsx";
import { chanceWords } from "../words/predictionSentences.ts";
import { curveWords, NAMED_FIRST } from "../words/worthSentences.ts";

interface Point {
  readonly count: number;
  readonly share: number;
}

const SHARES = [0, 0.25, 0.5, 0.75, 1];
const MOST_TICKS = 8;
/** Labels stand below the curve, the last one further: the curve is flat before it. */
const LABEL_BELOW = 18;
const LAST_LABEL_BELOW = 30;

export function WorthCurve({ tests }: { readonly tests: readonly WorthwhileTest[] }) {
  const points: Point[] = [
    { count: 0, share: 0 },
    ...tests.map(({ shareSettled }, index) => ({ count: index + 1, share: shareSettled })),
  ];
  const x = scaleLinear([0, tests.length], [CHART.left, CHART.width - CHART.right]);
  const y = scaleLinear([0, 1], [CHART.height - CHART.bottom, CHART.top]);
  const path = line<Point>()
    .x(({ count }) => x(count))
    .y(({ share }) => y(share));
  const labelled = points.filter(
    ({ count }) => count === Math.min(NAMED_FIRST, tests.length) || count === tests.length,
  );
  return (
    <svg
      className="chart worth__curve"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Share of the avoidable risk that is settled, by the number of test prints made: ${curveWords(tests)}.`}
    >
      <Axes
        x={x}
        y={y}
        xTicks={x.ticks(Math.min(tests.length, MOST_TICKS)).filter(Number.isInteger)}
        yTicks={SHARES}
        xWords={String}
        yWords={(share) => `${Math.round(share * 100)}`}
        xTitle="test prints made, the best first"
        yTitle="% of the avoidable risk settled"
      />
      <path d={path(points) ?? ""} className="chart__line" />
      {points.slice(1).map(({ count, share }) => (
        <circle key={count} cx={x(count)} cy={y(share)} r={3} className="chart__point" />
      ))}
      {labelled.map(({ count, share }) => (
        <text
          key={count}
          className="chart__strong"
          x={x(count)}
          y={y(share) + (count === tests.length ? LAST_LABEL_BELOW : LABEL_BELOW)}
          textAnchor={count === tests.length ? "end" : "start"}
        >
          {count} {count === 1 ? "test" : "tests"}: {chanceWords(share)}
        </text>
      ))}
    </svg>
  );
}
