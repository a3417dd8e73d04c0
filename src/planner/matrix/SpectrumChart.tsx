/** Reflectance against wavelength, bare and printed. */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { Prediction } from "../../core/prediction/prediction.ts";
import { Axes, CHART } from "./chartFrame.tsx";

const FIRST_NM = 380;
const STEP_NM = 10;
const LAST_NM = 730;
const X_TICKS = [400, 500, 600, 700];
/** A chart of a dark cloth is not stretched beyond this: it would look like a light one. */
const LEAST_TOP = 0.2;

const nmAt = (band: number) => FIRST_NM + STEP_NM * band;
const percent = (reflectance: number) => `${Math.round(reflectance * 100)}\u00a0%`;

type Spectra = Pick<Prediction, "bareReflectance" | "printedReflectance">;

function meanOf(spectrum: ArrayLike<number>): number {
  return Array.from(spectrum).reduce((sum, value) => sum + value, 0) / spectrum.length;
}

/** The chart in words. */
export function spectrumSummary({ bareReflectance, printedReflectance }: Spectra): string {
  return `Mean reflectance ${percent(meanOf(bareReflectance))} bare, ${percent(meanOf(printedReflectance))} printed, from ${FIRST_NM} to ${LAST_NM} nm.`;
}

export function SpectrumChart({ bareReflectance, printedReflectance }: Spectra) {
  const top = Math.max(LEAST_TOP, ...bareReflectance, ...printedReflectance);
  const x = scaleLinear([FIRST_NM, LAST_NM], [CHART.left, CHART.width - CHART.right]);
  const y = scaleLinear([0, top], [CHART.height - CHART.bottom, CHART.top]).nice(4);
  const path = line<number>()
    .x((_value, band) => x(nmAt(band)))
    .y((value) => y(value));
  const labels = labelPositions(bareReflectance, printedReflectance, y);
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`Reflectance against wavelength. ${spectrumSummary({ bareReflectance, printedReflectance })}`}
    >
      <Axes
        x={x}
        y={y}
        xTicks={X_TICKS}
        yTicks={y.ticks(4)}
        xWords={String}
        yWords={percent}
        xTitle="wavelength, nm"
        yTitle="reflectance"
      />
      <path d={path(Array.from(bareReflectance)) ?? ""} className="chart__line chart__line--thin" />
      <path d={path(Array.from(printedReflectance)) ?? ""} className="chart__line" />
      <text x={x(labels.nm)} y={labels.bareY} textAnchor="middle">
        bare
      </text>
      <text x={x(labels.nm)} y={labels.printedY} textAnchor="middle" className="chart__strong">
        printed
      </text>
    </svg>
  );
}

/** Where the two curves lie furthest apart the words stand clear of them: one above, one below. */
function labelPositions(bare: ArrayLike<number>, printed: ArrayLike<number>, y: (value: number) => number) {
  let at = 10;
  for (let band = 6; band < bare.length - 6; band++) {
    if (Math.abs(bare[band]! - printed[band]!) > Math.abs(bare[at]! - printed[at]!)) at = band;
  }
  const bareIsAbove = bare[at]! >= printed[at]!;
  const upper = Math.max(CHART.top + 8, y(Math.max(bare[at]!, printed[at]!)) - 10);
  const floor = CHART.height - CHART.bottom - 6;
  const lower = Math.min(floor, y(Math.min(bare[at]!, printed[at]!)) + 20);
  return { nm: nmAt(at), bareY: bareIsAbove ? upper : lower, printedY: bareIsAbove ? lower : upper };
}
