/** What every chart of the planner shares: size, axes in greys, labels beside the lines. */
import type { ScaleLinear } from "d3-scale";
import "./chart.css";

export const CHART = { width: 352, height: 208, left: 40, right: 12, top: 24, bottom: 36 } as const;

export type Scale = ScaleLinear<number, number>;

interface AxesProps {
  readonly x: Scale;
  readonly y: Scale;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly xWords: (value: number) => string;
  readonly yWords: (value: number) => string;
  readonly xTitle: string;
  readonly yTitle: string;
}

export function Axes({ x, y, xTicks, yTicks, xWords, yWords, xTitle, yTitle }: AxesProps) {
  const floor = CHART.height - CHART.bottom;
  return (
    <g className="chart__axes">
      {yTicks.map((value) => (
        <g key={value} transform={`translate(0 ${y(value)})`}>
          <line x1={CHART.left} x2={CHART.width - CHART.right} className="chart__rule" />
          <text x={CHART.left - 6} dy="0.32em" textAnchor="end">
            {yWords(value)}
          </text>
        </g>
      ))}
      <line x1={CHART.left} x2={CHART.left} y1={CHART.top} y2={floor} className="chart__edge" />
      <line x1={CHART.left} x2={CHART.width - CHART.right} y1={floor} y2={floor} className="chart__edge" />
      {xTicks.map((value) => (
        <text key={value} x={x(value)} y={floor + 17} textAnchor="middle">
          {xWords(value)}
        </text>
      ))}
      <text x={CHART.left - 32} y={12} className="chart__title">
        {yTitle}
      </text>
      <text x={CHART.width - CHART.right} y={CHART.height - 4} textAnchor="end" className="chart__title">
        {xTitle}
      </text>
    </g>
  );
}
