/**
 * How a reading was lit and viewed: whether the light mirrored by a glossy surface reaches the sensor.
 * "45:0" and "specular-excluded" lose it, "specular-included" (d:8 sphere, trap closed) keeps it.
 */
export type Geometry = "45:0" | "specular-included" | "specular-excluded";
