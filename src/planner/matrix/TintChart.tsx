/** How much darker or lighter with how much tint: the line, its nine-in-ten band, the target, the present tint. */
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import { bandWords, changeWords } from "../words/predictionSentences.ts";
import { CHART } from "./chartFrame.tsx";
import { TintFrame, tintPath, tintScales } from "./tintFrame.tsx";

interface Props {
  readonly curve: readonly TintCurvePoint[];
  readonly band: Band;
  readonly tintName: string;
  readonly presentFraction: number;
  readonly presentDeltaL: number;
}

/** The chart in words. */
export function tintSummary({ curve, band, tintName }: Pick<Props, "curve" | "band" | "tintName">): string {
  const first = curve[0];
  const last = curve.at(-1);
  if (first === undefined || last === undefined) return "";
  return `${changeWords(first.deltaL)} with ${percentWords(first.massFraction)} ${tintName}, ${changeWords(last.deltaL)} with ${percentWords(last.massFraction)}; the target is ${bandWords(band)}.`;
}

export function TintChart({ curve, band, tintName, presentFraction, presentDeltaL }: Props) {
  const scales = tintScales(curve, band);
  if (scales === undefined) return null;
  const { x, y } = scales;
  const [start = 0, end = 0] = x.domain();
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Change against ${tintName}. ${tintSummary({ curve, band, tintName })}`}
    >
      <TintFrame curve={curve} band={band} tintName={tintName} scales={scales} targetWordAt="end" />
      <path d={tintPath(curve, scales, ({ deltaL }) => deltaL)} className="chart__line" />
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
