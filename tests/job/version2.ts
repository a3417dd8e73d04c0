/** An archive as version 2 wrote it, every list filled; invented. Never to be changed: it is what migrations start from. */

const id = (number: number) => `00000000-0000-4000-8000-${String(number).padStart(12, "0")}`;
const at = "2026-02-03T10:05:00.000Z";
const cure = { filmCelsius: 160, seconds: 60, note: "Data sheet." };
const viewing = { illuminant: "D65", observer: "10deg" };
const lab = { L: 30, a: -15, b: 6 };
const recipe = [
  { itemId: id(1), massFraction: 0.995 },
  { itemId: id(2), massFraction: 0.005 },
];

function shelf() {
  const inks = {
    largestFraction: 1,
    densityGramsPerCm3: 1.2,
    cure,
    highestCelsius: 190,
    hazards: ["An invented hazard."],
    pricePerKg: 11,
  };
  const lots = (code: string, number: number) => [
    { id: id(number), code, receivedOn: "2026-01-05", expiresOn: null, note: "" },
  ];
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
        lots: lots("C-1", 30),
      },
    ],
    colourants: [
      {
        id: id(2),
        name: "Black",
        strengthDefinition: "ready-made-ink",
        optics: { kind: "black" },
        lowCure: false,
        ...inks,
        lots: lots("B-1", 31),
      },
    ],
    masters: [
      {
        id: id(3),
        colourantId: id(2),
        baseId: id(1),
        massFraction: 0.1,
        madeOn: "2026-01-12",
        expiresOn: null,
        gramsLeft: 250,
        dilutionId: id(40),
        note: "",
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
        flood: "light",
        transferFraction: 0.8,
        weighed: { kind: "mean", meanGsm: 24, sdGsm: 2, pieceCount: 10, densityGramsPerCm3: 1.2 },
      },
    ],
    defaults: {
      shopName: "An invented shop",
      currency: "EUR",
      units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
      instrument: { viewing, geometry: "45:0" },
      tintLadder: [0, 0.005],
      testAboveCount: 144,
      prices: { print: 0.4, polyesterSurcharge: 0, screen: 25, inkChange: 12, testPrint: 25 },
      spoilageRule: { code: "by-quantity" },
      refusedFraction: 0.6,
      scales: [{ id: "gram", name: "1 g scale", stepGrams: 1, maxGrams: null }],
      potSizes: [{ id: "litre", name: "1 litre", volumeCm3: 1000 }],
      screenWetGrams: 400,
      changeMinutes: { wipe: 3, washUp: 12, lowCureCleaning: 15, darkToLight: 3, screenSetUp: 9 },
      priorScales: { mill: 1.2 },
      columnMatchings: [{ name: "Bench", columns: { bareL: "L1" } }],
    },
  };
}

function lot(number: number, mill: string) {
  return {
    id: id(number),
    style: "Tee",
    colourway: "Forest",
    mill,
    country: "",
    lot: `${mill} 1`,
    blend: [{ fibre: "polyester", massFraction: 1, dyed: true }],
    yarn: "spun",
    finish: "none",
    heather: false,
    bleeds: false,
    bare: { kind: "readings", viewing, geometry: "45:0", readings: [lab] },
    note: "",
  };
}

function testPrint(number: number, supersedesId: string | null) {
  return {
    id: id(number),
    garmentLotId: id(9),
    recipe,
    actualGrams: [
      { itemId: id(1), grams: 990 },
      { itemId: id(2), grams: 5 },
    ],
    setUpId: id(7),
    depositGsm: 23,
    halftoneFraction: 1,
    smoothed: false,
    cure: { filmCelsius: 158, seconds: 60 },
    printedAt: at,
    readAt: at,
    operator: "A. Printer",
    readings: {
      kind: "lab",
      viewing,
      geometry: "45:0",
      pairs: [{ bare: lab, print: { ...lab, L: 26 } }],
      pairCount: 4,
      pieceCount: 2,
      sdPairDifference: 0.3,
    },
    instrument: "Bench",
    backing: "White tile",
    washCount: 0,
    verdict: "reference",
    note: "",
    photo: null,
    supersedesId,
  };
}

/** A weigh sheet of one line of clear. */
const sheet = {
  scaleStepGrams: 1,
  batchGrams: 900,
  lines: [
    {
      id: id(1),
      role: "base",
      name: "Clear",
      contents: [{ itemId: id(1), massFraction: 1 }],
      exactGrams: 900,
      grams: 900,
    },
  ],
  baseLots: [{ itemId: id(1), code: "C-1" }],
  by: "A. Printer",
  at,
  expiresOn: null,
  note: "",
  supersedesId: null,
};

function library() {
  return {
    shelf: shelf(),
    garmentLots: [lot(9, "Mill A"), lot(8, "Mill B")],
    testPrints: [testPrint(10, null), testPrint(11, id(10))],
    approvals: [
      {
        id: id(12),
        garmentLotId: id(9),
        testPrintId: id(11),
        approvedBy: "A. Buyer",
        approvedAt: at,
        note: "",
        modelVersion: "2",
        said: { deltaL: -4, p5: -6, p95: -3, evidence: "this lot", chanceInBand: 0.8 },
        supersedesId: null,
      },
    ],
    goodsInChecks: [
      {
        id: id(13),
        approvedLotId: id(9),
        arrivingLotId: id(8),
        baseId: id(1),
        approvedChange: -6,
        arrivingChange: -9,
        viewing,
        geometry: "45:0",
        at,
        by: "A. Printer",
        note: "",
        supersedesId: null,
      },
    ],
    slipAnswers: [{ id: id(14), testPrintId: id(11), slip: "none", answer: "keep", by: "A. Printer", at }],
    pots: [
      {
        id: id(41),
        jobId: id(20),
        mixId: id(24),
        mixName: "Clear and black",
        recipe,
        recipeVersion: 1,
        potNumber: 1,
        potCount: 1,
        potLimitGrams: 1000,
        hazards: null,
        ...sheet,
      },
    ],
    dilutions: [
      { id: id(40), colourantId: id(2), baseId: id(1), massFraction: 0.1, madeOn: "2026-01-12", ...sheet },
    ],
    potEntries: [
      {
        id: id(42),
        potId: id(41),
        kind: "weighed",
        lineId: id(1),
        grams: 899,
        by: "A. Printer",
        at,
        note: "",
        supersedesId: null,
      },
    ],
  };
}

function job() {
  const line = {
    quantities: [{ size: "M", count: 200 }],
    suppliedBy: "customer",
    piecePrice: 3,
    note: "",
  };
  const signed = { lineId: id(21), placeId: id(22), subject: "subject", signer: "A. Printer", at };
  return {
    id: id(20),
    number: "V-2",
    customer: "An invented customer",
    createdAt: at,
    forChildren: true,
    lines: [
      { id: id(21), garmentLotId: id(9), ...line, substitutedForLotId: null },
      { id: id(26), garmentLotId: id(8), ...line, substitutedForLotId: id(9) },
    ],
    places: [
      {
        id: id(22),
        name: "Front",
        widthMm: 280,
        heightMm: 330,
        coverFraction: 0.5,
        halftoneFraction: 0.7,
        smoothed: true,
        band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
        candidates: [{ id: id(23), mixId: id(24), setUpId: id(7) }],
        lineIds: [id(21), id(26)],
      },
    ],
    mixes: [{ id: id(24), name: "Clear and black", recipe, clothCoverFraction: null }],
    choices: [{ lineId: id(21), placeId: id(22), candidateId: id(23) }],
    viewing,
    checklist: [
      { id: id(25), ...signed, action: "sign", itemCode: "wash-test", note: "" },
      { id: id(27), ...signed, action: "release", itemCode: null, note: "Released." },
    ],
  };
}

export function version2Archive() {
  return { kind: "tonebench-job", version: 2, job: job(), library: library() };
}
