/** The grades of the grey scale for change of colour (ISO 105-A02), from no change down, as records store them. */
import { GREY_SCALE_STEPS } from "../core/colorimetry/greyScale.ts";

/** 5, 4.5, ... 1: one for each step of the scale. */
export const GREY_SCALE_GRADES: readonly number[] = GREY_SCALE_STEPS.map((_, step) => 5 - step / 2);
