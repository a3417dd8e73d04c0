/** The demo's twelve garments: all invented, colours and pieces from the table "The demo job" of the product. */
import type { BlendPart, GarmentLot } from "../../src/job/garmentLotDocument.ts";
import type { Line } from "../../src/job/jobDocument.ts";
import { demoId } from "./seededIds.ts";

type Lab = readonly [number, number, number];

/** Fibre, mass fraction, and whether it carries the colour. */
type Blend = readonly (readonly [BlendPart["fibre"], number, boolean])[];

export interface DemoGarment {
  readonly key: string;
  readonly style: string;
  readonly colourway: string;
  readonly mill: string;
  readonly country: string;
  readonly lot: string;
  readonly blend: Blend;
  readonly yarn: GarmentLot["yarn"];
  readonly finish: GarmentLot["finish"];
  readonly heather?: true;
  readonly bleeds?: true;
  /** L*, a*, b* under D65 and the 10° observer, 45:0. */
  readonly bare: Lab;
  readonly pieces: number;
  readonly price: number;
  readonly note: string;
}

const ALL_COTTON: Blend = [["cotton", 1, true]];
const ALL_POLYESTER: Blend = [["polyester", 1, true]];
const HALF_AND_HALF: Blend = [
  ["cotton", 0.5, true],
  ["polyester", 0.5, true],
];

export const GARMENTS: readonly DemoGarment[] = [
  {
    key: "G01",
    style: "Ring-spun tee",
    colourway: "Navy",
    mill: "Mill A",
    country: "Country 1",
    lot: "RN-0417",
    blend: ALL_COTTON,
    yarn: "spun",
    finish: "none",
    bare: [21.5, 1.5, -14],
    pieces: 900,
    price: 3.1,
    note: "",
  },
  {
    key: "G02",
    style: "Everyday heather tee",
    colourway: "Light grey heather",
    mill: "Mill A",
    country: "Country 1",
    lot: "EH-0092",
    blend: [
      ["cotton", 0.9, false],
      ["polyester", 0.1, true],
    ],
    yarn: "spun",
    finish: "none",
    heather: true,
    bare: [72, 0.3, -1],
    pieces: 600,
    price: 3.1,
    note: "Dark dyed polyester among undyed cotton.",
  },
  {
    key: "G03",
    style: "Blend crew tee",
    colourway: "Forest",
    mill: "Mill A",
    country: "Country 1",
    lot: "BC-2231",
    blend: HALF_AND_HALF,
    yarn: "spun",
    finish: "none",
    bare: [30.5, -15, 6.5],
    pieces: 300,
    price: 2.85,
    note: "The customer approved the print on this lot.",
  },
  {
    key: "G04",
    style: "Blend crew tee",
    colourway: "Forest",
    mill: "Mill B",
    country: "Country 2",
    lot: "BC-7708",
    blend: HALF_AND_HALF,
    yarn: "spun",
    finish: "none",
    bare: [30.9, -14.6, 6.9],
    pieces: 2100,
    price: 2.85,
    note: "Sent in place of mill A's forest, which ran out.",
  },
  {
    key: "G05",
    style: "Blend heather tee",
    colourway: "Graphite heather",
    mill: "Mill A",
    country: "Country 1",
    lot: "BH-1150",
    blend: [
      ["cotton", 0.5, false],
      ["polyester", 0.5, true],
    ],
    yarn: "spun",
    finish: "none",
    heather: true,
    bare: [45, 0.4, -1.8],
    pieces: 750,
    price: 3.05,
    note: "",
  },
  {
    key: "G06",
    style: "Blend heather tee",
    colourway: "Washed-red heather",
    mill: "Mill A",
    country: "Country 1",
    lot: "BH-1163",
    blend: [
      ["cotton", 0.5, true],
      ["polyester", 0.5, false],
    ],
    yarn: "spun",
    finish: "none",
    heather: true,
    bare: [50, 38, 18],
    pieces: 300,
    price: 3.05,
    note: "Here the cotton carries the colour.",
  },
  {
    key: "G07",
    style: "Tri-blend tee",
    colourway: "Denim",
    mill: "Mill C",
    country: "Country 2",
    lot: "TB-0556",
    blend: [
      ["polyester", 0.5, true],
      ["cotton", 0.25, true],
      ["viscose", 0.25, true],
    ],
    yarn: "spun",
    finish: "none",
    bare: [42, -2, -18],
    pieces: 600,
    price: 4.6,
    note: "",
  },
  {
    key: "G08",
    style: "Practice tee",
    colourway: "Brick",
    mill: "Mill C",
    country: "Country 2",
    lot: "PT-3304",
    blend: ALL_POLYESTER,
    yarn: "spun",
    finish: "none",
    bleeds: true,
    bare: [38, 42, 24],
    pieces: 450,
    price: 4.2,
    note: "Gives up dye under heat.",
  },
  {
    key: "G09",
    style: "Wicking training tee",
    colourway: "Royal",
    mill: "Mill D",
    country: "Country 3",
    lot: "WT-8120",
    blend: ALL_POLYESTER,
    yarn: "filament",
    finish: "wicking",
    bare: [30, 12, -45],
    pieces: 540,
    price: 5.1,
    note: "",
  },
  {
    key: "G10",
    style: "Wicking training tee",
    colourway: "Black",
    mill: "Mill D",
    country: "Country 3",
    lot: "WT-8131",
    blend: ALL_POLYESTER,
    yarn: "filament",
    finish: "wicking",
    bare: [14.5, 0.2, -0.8],
    pieces: 360,
    price: 5.1,
    note: "",
  },
  {
    key: "G11",
    style: "Wicking training tee",
    colourway: "White",
    mill: "Mill D",
    country: "Country 3",
    lot: "WT-8144",
    blend: ALL_POLYESTER,
    yarn: "filament",
    finish: "wicking",
    bare: [94, 1.2, -4.5],
    pieces: 180,
    price: 4.7,
    note: "",
  },
  {
    key: "G12",
    style: "Shower quarter-zip",
    colourway: "Slate",
    mill: "Mill E",
    country: "Country 3",
    lot: "QZ-0061",
    blend: ALL_POLYESTER,
    yarn: "filament",
    finish: "repellent",
    bare: [47, -1.5, -6],
    pieces: 120,
    price: 14.5,
    note: "Water-repellent finish.",
  },
];

/** Share of each size of an order; invented. */
const SIZE_SHARES: readonly (readonly [string, number])[] = [
  ["S", 0.15],
  ["M", 0.3],
  ["L", 0.3],
  ["XL", 0.17],
  ["2XL", 0.08],
];

/** Whole pieces by size that sum to the pieces: the largest size-share takes what rounding leaves. */
export function piecesBySize(pieces: number): { size: string; count: number }[] {
  const sizes = SIZE_SHARES.map(([size, share]) => ({ size, count: Math.floor(pieces * share) }));
  const rest = pieces - sizes.reduce((sum, entry) => sum + entry.count, 0);
  return sizes.map((entry) => (entry.size === "L" ? { ...entry, count: entry.count + rest } : entry));
}

/** The library's lot of a demo garment; another lot of it has another key, lot number and reading. */
export function garmentLot(
  garment: DemoGarment,
  other?: { readonly key: string; readonly lot: string; readonly bare: Lab; readonly note: string },
): GarmentLot {
  const [L, a, b] = other?.bare ?? garment.bare;
  return {
    id: demoId(`lot ${other?.key ?? garment.key}`),
    style: garment.style,
    colourway: garment.colourway,
    mill: garment.mill,
    country: garment.country,
    lot: other?.lot ?? garment.lot,
    blend: garment.blend.map(([fibre, massFraction, dyed]) => ({ fibre, massFraction, dyed })),
    yarn: garment.yarn,
    finish: garment.finish,
    heather: garment.heather ?? false,
    bleeds: garment.bleeds ?? false,
    bare: {
      kind: "readings",
      viewing: { illuminant: "D65", observer: "10deg" },
      geometry: "45:0",
      readings: [{ L, a, b }],
    },
    note: other?.note ?? garment.note,
  };
}

/** Pieces ordered besides, to print tests on; fewer of a small line. Invented. */
const SPARE_PIECES = 8;
const SPARE_OF_SMALL = 6;
const SMALL_PIECES = 200;

/** The order's line of a demo garment. */
export function garmentLine(garment: DemoGarment): Line {
  return {
    id: demoId(`line ${garment.key}`),
    garmentLotId: demoId(`lot ${garment.key}`),
    quantities: piecesBySize(garment.pieces),
    suppliedBy: "shop",
    piecePrice: garment.price,
    substitutedForLotId: garment.key === "G04" ? demoId("lot G03") : null,
    sparePieceCount: garment.pieces < SMALL_PIECES ? SPARE_OF_SMALL : SPARE_PIECES,
    note: "",
  };
}
