/** Change against tint before and after the test prints: the wide range of before, the range of now, the readings as points. */
import type { TintCurvePoint } from "../../engine/protocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import type { LotReading } from "../../job/recordBook/lotReadings.ts";
import { CHART } from "../matrix/chartFrame.tsx";
import { TintFrame, tintPath, tintScales } from "../matrix/tintFrame.tsx";
import { curveSentence } from "../words/curveSentences.ts";

interface Props {
  readonly curve: readonly TintCurvePoint[];
  /** Before any test print; empty where none taught. */
  readonly prior: readonly TintCurvePoint[];
  readonly points: readonly LotReading[];
  readonly band: Band;
  readonly tintName: string;
}

export function LearnedChart({ curve, prior, points, band, tintName }: Props) {
  const read = points.map(({ deltaL }) => deltaL);
  const scales = tintScales([...curve, ...prior], band, read);
  if (scales === undefined) return null;
  const { x, y } = scales;
  const lastPrior = prior.at(-1);
  const last = curve.at(-1);
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Change against ${tintName}, before and after the test prints. ${curveSentence(curve, prior, points)}`}
    >
      <TintFrame curve={curve} band={band} tintName={tintName} scales={scales} targetWordAt="start">
        {prior.length > 0 && (
          <g className="tests__prior">
            <path d={tintPath(prior, scales, ({ deltaL5 }) => deltaL5)} />
            <path d={tintPath(prior, scales, ({ deltaL95 }) => deltaL95)} />
          </g>
        )}
      </TintFrame>
      <path d={tintPath(curve, scales, ({ deltaL }) => deltaL)} className="chart__line" />
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
