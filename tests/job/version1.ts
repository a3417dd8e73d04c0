/** An archive as version 1 wrote it, every list filled; invented. Never to be changed: it is what migrations start from. */

const id = (number: number) => `00000000-0000-4000-8000-${String(number).padStart(12, "0")}`;
const at = "2026-01-08T13:20:00.000Z";
const cure = { filmCelsius: 160, seconds: 60, note: "Data sheet." };
const viewing = { illuminant: "D65", observer: "10deg" };
const lab = { L: 30, a: -15, b: 6 };

function shelf() {
  const inks = { largestFraction: 1, densityGramsPerCm3: 1.2, cure, pricePerKg: null };
  return {
    bases: [
      {
        id: id(1),
        name: "Clear",
        role: "base",
        strength: 1,
        reference: true,
        hazePerUm: 0,
        closedFraction: 0.02,
        lowCure: true,
        ...inks,
      },
    ],
    colourants: [
      { id: id(2), name: "Black", strengthDefinition: "ready-made-ink", optics: { kind: "black" }, ...inks },
    ],
    masters: [
      {
        id: id(3),
        colourantId: id(2),
        baseId: id(1),
        massFraction: 0.1,
        madeOn: "2026-01-12",
        expiresOn: "July",
      },
      {
        id: id(4),
        colourantId: id(2),
        baseId: id(1),
        massFraction: 0.02,
        madeOn: "",
        expiresOn: "2026-02-30",
      },
    ],
    meshes: [
      { id: id(5), name: "61-64", threadsPerCm: 61, threadUm: 64, thicknessUm: null, screensAtHand: 4 },
    ],
    squeegees: [{ id: id(6), name: "70/90/70", shoreA: [70, 90, 70], hard: false }],
    setUps: [
      {
        id: id(7),
        name: "Weighed",
        meshId: id(5),
        squeegeeId: id(6),
        strokeCount: 1,
        weighed: { meanGsm: 24, sdGsm: 2, pieceCount: 10, densityGramsPerCm3: 1.2 },
      },
      { id: id(8), name: "Estimated", meshId: id(5), squeegeeId: id(6), strokeCount: 1, weighed: null },
    ],
    defaults: {
      shopName: "An invented shop",
      currency: "EUR",
      units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
      instrument: { viewing, geometry: "45:0" },
      tintLadder: [0, 0.005],
      testAboveCount: 144,
      prices: { print: 0.4, polyesterSurcharge: 0, screen: 25, inkChange: 12, testPrint: 25 },
      spoilageFraction: 0.03,
      refusedFraction: 0.7,
    },
  };
}

function testPrint(number: number, readings: object) {
  return {
    id: id(number),
    garmentLotId: id(9),
    recipe: [{ itemId: id(1), massFraction: 1 }],
    setUpId: id(7),
    printedAt: at,
    readAt: at,
    operator: "A. Printer",
    readings,
    verdict: "reference",
    note: "",
    supersedesId: null,
  };
}

function library() {
  const pair = { bare: lab, print: { ...lab, L: 26 } };
  const reflectance = Array.from({ length: 36 }, () => 0.1);
  return {
    shelf: shelf(),
    garmentLots: [
      {
        id: id(9),
        style: "Tee",
        colourway: "Forest",
        mill: "Mill A",
        country: "",
        lot: "A-1",
        blend: [{ fibre: "polyester", massFraction: 1, dyed: true }],
        yarn: "spun",
        finish: "none",
        heather: false,
        bleeds: false,
        bare: { kind: "readings", viewing, geometry: "45:0", readings: [lab] },
        note: "",
      },
    ],
    testPrints: [
      testPrint(10, { kind: "lab", viewing, geometry: "45:0", pairs: [pair, pair] }),
      testPrint(11, {
        kind: "spectral",
        geometry: "45:0",
        pairs: [{ bare: reflectance, print: reflectance }],
      }),
    ],
    approvals: [
      {
        id: id(12),
        garmentLotId: id(9),
        testPrintId: id(10),
        approvedBy: "A. Buyer",
        approvedAt: at,
        note: "",
        supersedesId: null,
      },
    ],
  };
}

function job() {
  return {
    id: id(20),
    number: "V-1",
    customer: "An invented customer",
    createdAt: at,
    lines: [
      {
        id: id(21),
        garmentLotId: id(9),
        quantities: [{ size: "M", count: 200 }],
        suppliedBy: "shop",
        piecePrice: 3,
        substitutedForLotId: null,
        note: "",
      },
    ],
    places: [
      {
        id: id(22),
        name: "Front",
        widthMm: 280,
        heightMm: 330,
        coverFraction: 0.5,
        halftoneFraction: 1,
        smoothed: false,
        band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
        candidates: [{ id: id(23), mixId: id(24), setUpId: id(7) }],
        lineIds: null,
      },
    ],
    mixes: [
      { id: id(24), name: "Clear", recipe: [{ itemId: id(1), massFraction: 1 }], clothCoverFraction: null },
    ],
    choices: [{ lineId: id(21), placeId: id(22), candidateId: id(23) }],
    viewing,
    checklist: [
      {
        id: id(25),
        lineId: id(21),
        placeId: id(22),
        action: "sign",
        itemCode: "wash-test",
        subject: "subject",
        signer: "A. Printer",
        at,
        note: "",
      },
    ],
  };
}

export function version1Archive() {
  return { kind: "tonebench-job", version: 1, job: job(), library: library() };
}
