/** A synthetic shop's styles with their mills, colourways and lots: the true cloth of each lot and how strongly it reacts. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import type { Lab, Viewing } from "../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import type { FibrePart } from "../../src/core/prediction/inputs.ts";
import type { Spectrum } from "../../src/core/spectrum/spectrum.ts";
import type { Draws } from "./draws.ts";
import { dyeAbsorption, FAMILIES, heapReflectance, naturalAbsorption, type Recipe } from "./dyeSpectra.ts";
import { blended, type Population } from "./fibrePopulations.ts";
import * as effects from "./trueEffects.ts";

export type ClothKind = "solid" | "heather" | "white";

/** One garment lot as it truly is. Keys name what is shared: the same key, the same hidden effect. */
export interface ClothLot {
  readonly lotKey: string;
  readonly millKey: string;
  readonly colourwayKey: string;
  readonly styleKey: string;
  readonly kind: ClothKind;
  readonly fibres: readonly FibrePart[];
  readonly populations: readonly Population[];
  readonly blendConstant: number;
  readonly bare: Spectrum;
  readonly bareLab: Lab;
  /** Style, mill, colourway and lot together: part of ln(wet-out). */
  readonly lnReaction: number;
}

type Blend = readonly (readonly [fibre: FibrePart["fibre"], massFraction: number])[];
/** What garments are made of, and how often. Invented shares; blends as the trade sells them. */
const BLENDS: readonly (readonly [Blend, number])[] = [
  [[["polyester-spun", 1]], 0.13],
  [[["polyester-filament", 1]], 0.15],
  [
    [
      ["polyester-spun", 0.5],
      ["cotton", 0.5],
    ],
    0.26,
  ],
  [
    [
      ["cotton", 0.6],
      ["polyester-spun", 0.4],
    ],
    0.1,
  ],
  [
    [
      ["polyester-spun", 0.5],
      ["cotton", 0.25],
      ["viscose", 0.25],
    ],
    0.12,
  ],
  [
    [
      ["cotton", 0.9],
      ["polyester-spun", 0.1],
    ],
    0.05,
  ],
  [[["cotton", 1]], 0.13],
  [
    [
      ["cotton", 0.6],
      ["viscose", 0.4],
    ],
    0.06,
  ],
];
const WHITE_CHANCE = 0.08;
const HEATHER_CHANCE = 0.35;
const POLYESTER_DYED_IN_HEATHER_CHANCE = 0.6;
const HEATHER_LIGHTNESS = [32, 78] as const;
const SURFACE_RANGE = [0.003, 0.01] as const;
const HALVINGS = 40;

const isPolyester = (fibre: FibrePart["fibre"]): boolean => fibre.startsWith("polyester");

interface Colourway {
  readonly kind: ClothKind;
  readonly recipe: Recipe;
  readonly lightness: number;
  readonly fibres: readonly FibrePart[];
  /** Per fibre: ln of its dye against the colourway's, and shift of its bands. */
  readonly unionShade: readonly (readonly [lnDye: number, shiftNm: number])[];
  readonly surface: number;
}

function drawColourway(draws: Draws, blend: Blend): Colourway {
  const isWhite = draws.chance(WHITE_CHANCE);
  const hasBoth = blend.some(([fibre]) => isPolyester(fibre)) && blend.some(([fibre]) => !isPolyester(fibre));
  const isHeather = !isWhite && hasBoth && draws.chance(HEATHER_CHANCE);
  const family = draws.pick(FAMILIES);
  const polyesterDyed = draws.chance(POLYESTER_DYED_IN_HEATHER_CHANCE);
  return {
    kind: isWhite ? "white" : isHeather ? "heather" : "solid",
    recipe: family.recipe,
    lightness: draws.between(...(isHeather ? HEATHER_LIGHTNESS : family.lightness)),
    fibres: blend.map(([fibre, massFraction]) => ({
      fibre,
      massFraction,
      dyed: !isWhite && (!isHeather || isPolyester(fibre) === polyesterDyed),
    })),
    unionShade: blend.map(() => [
      draws.normal(effects.UNION_SHADE_SD),
      draws.normal(effects.UNION_BAND_SHIFT_SD_NM),
    ]),
    surface: draws.between(...SURFACE_RANGE),
  };
}

function populationsOf(
  { fibres, unionShade, surface }: Colourway,
  recipe: Recipe,
  lnDepth: number,
): Population[] {
  return fibres.map(({ fibre, massFraction, dyed }, k) => {
    const natural = naturalAbsorption(isPolyester(fibre));
    if (!dyed)
      return { fibre, massFraction, reflectance: natural.map((ratio) => heapReflectance(ratio, surface)) };
    const [lnDye, shiftNm] = unionShade[k]!;
    const depth = Math.exp(lnDepth + lnDye);
    const dye = dyeAbsorption(recipe, shiftNm);
    return {
      fibre,
      massFraction,
      reflectance: natural.map((ratio, i) => heapReflectance(ratio + depth * dye[i]!, surface)),
    };
  });
}

/** The depth of dye at which the blend has the colourway's L*, or the nearest it can have. */
function depthFor(colourway: Colourway, blendConstant: number, viewing: Viewing): number {
  if (colourway.kind === "white") return 0;
  let pale = Math.log(0.002);
  let deep = Math.log(60);
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (pale + deep) / 2;
    const bare = blended(populationsOf(colourway, colourway.recipe, middle), blendConstant);
    if (labFromReflectance(bare, weightsFor(viewing)).L > colourway.lightness) pale = middle;
    else deep = middle;
  }
  return (pale + deep) / 2;
}

/** Each dye of a recipe a little more or less, as no two dyebaths are alike. */
function variedRecipe(draws: Draws, recipe: Recipe): Recipe {
  return Object.fromEntries(
    Object.entries(recipe).map(([name, amount]) => [
      name,
      amount * Math.exp(draws.normal(effects.LOT_DYE_SD)),
    ]),
  );
}

/** All lots of one style. */
export function styleLots(draws: Draws, styleKey: string, viewing: Viewing): ClothLot[] {
  const blend = draws.pickWeighted(BLENDS);
  const lnStyle = draws.heavyTailed(effects.STYLE_SD);
  const blendConstant = draws.between(...effects.BLEND_CONSTANT_RANGE);
  const mills = ["A", "B"].slice(0, draws.chance(0.35) ? 2 : 1).map((letter) => ({
    millKey: `${styleKey}/mill ${letter}`,
    lnReaction: draws.normal(effects.MILL_SD),
    lnShade: draws.normal(effects.MILL_SHADE_SD),
  }));
  const lots: ClothLot[] = [];
  const colourwayCount = draws.integer(1, 3);
  for (let c = 1; c <= colourwayCount; c++) {
    const colourway = drawColourway(draws, blend);
    const lnColourway = draws.normal(effects.COLOURWAY_SD);
    const lnDepth = depthFor(colourway, blendConstant, viewing);
    for (const mill of mills) {
      const lotCount = draws.integer(1, 2);
      for (let l = 1; l <= lotCount; l++) {
        const recipe = variedRecipe(draws, colourway.recipe);
        const lnLotDepth = lnDepth + mill.lnShade + draws.normal(effects.LOT_SHADE_SD);
        const populations = populationsOf(colourway, recipe, lnLotDepth);
        const bare = blended(populations, blendConstant);
        lots.push({
          lotKey: `${mill.millKey}/colourway ${c}/lot ${l}`,
          millKey: mill.millKey,
          colourwayKey: `${styleKey}/colourway ${c}`,
          styleKey,
          kind: colourway.kind,
          fibres: colourway.fibres,
          populations,
          blendConstant,
          bare,
          bareLab: labFromReflectance(bare, weightsFor(viewing)),
          lnReaction: lnStyle + mill.lnReaction + lnColourway + draws.normal(effects.LOT_SD),
        });
      }
    }
  }
  return lots;
}
