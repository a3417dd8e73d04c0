/** How a colour is stored: as it was read, with the light, observer and geometry it was read under. */
import "./zodWithoutEval.ts";
import { z } from "zod";

export const labSchema = z.strictObject({
  L: z.number().min(0).max(120),
  a: z.number().min(-200).max(200),
  b: z.number().min(-200).max(200),
});

export const viewingSchema = z.strictObject({
  illuminant: z.enum(["D65", "D50", "A", "F11", "LED"]),
  observer: z.enum(["2deg", "10deg"]),
});

export const geometrySchema = z.enum(["45:0", "specular-included", "specular-excluded"]);

/** Reflectance factor in 36 bands, 380-730 nm by 10; up to 1.5 because brightened white cloth exceeds 1. */
export const reflectanceSchema = z.array(z.number().min(0).max(1.5)).length(36);

const readingsSchema = z.strictObject({
  kind: z.literal("readings"),
  viewing: viewingSchema,
  geometry: geometrySchema,
  readings: z.array(labSchema).min(1),
});

const spectrumSchema = z.strictObject({
  kind: z.literal("spectrum"),
  geometry: geometrySchema,
  reflectance: reflectanceSchema,
  /** What had to be assumed when the measured range was resampled; empty when nothing. */
  assumptions: z.array(z.string()),
});

const hexSchema = z.strictObject({
  kind: z.literal("hex"),
  hex: z.string().regex(/^#[0-9a-f]{6}$/i),
});

/** A colour as readings under one stated condition, as a spectrum, or as a screen colour, which is approximate. */
export const colourSchema = z.discriminatedUnion("kind", [readingsSchema, spectrumSchema, hexSchema]);

export type LabDocument = z.infer<typeof labSchema>;
export type ViewingDocument = z.infer<typeof viewingSchema>;
export type GeometryDocument = z.infer<typeof geometrySchema>;
export type ColourDocument = z.infer<typeof colourSchema>;
