/**
 * Readings files as instruments write them. All are invented here: names, figures and spectra are made from formulas,
 * none was measured, and no program wrote them.
 */

export interface ExampleSample {
  readonly name: string;
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

export const EXAMPLE_SAMPLES: readonly ExampleSample[] = [
  { name: "G03 bare 1", L: 30.52, a: -15.04, b: 6.51 },
  { name: "G03 print 1", L: 27.44, a: -14.12, b: 5.87 },
  { name: "G03 bare 2", L: 30.47, a: -14.96, b: 6.55 },
  { name: "G03 print 2", L: 27.36, a: -14.01, b: 5.93 },
];

export interface Band {
  readonly firstNm: number;
  readonly lastNm: number;
  readonly stepNm: number;
}

export const TEN_NM: Band = { firstNm: 380, lastNm: 730, stepNm: 10 };

export function wavelengths({ firstNm, lastNm, stepNm }: Band): number[] {
  return Array.from({ length: Math.round((lastNm - firstNm) / stepNm) + 1 }, (_, i) => firstNm + i * stepNm);
}

/** An invented cloth: a smooth curve between 0.03 and 0.4 whose height follows the sample's lightness. */
export function exampleReflectance({ L, a }: ExampleSample, nm: number): number {
  const height = 0.03 + 0.002 * L;
  return height + 0.1 * height * Math.sin((nm - 380) / 60 + a / 10) + 0.0004 * (nm - 380);
}

export interface CgatsOptions {
  readonly kind: "lab" | "xyz" | "spectral";
  readonly separator: "\t" | " ";
  /** Keyword lines, whole, as they stand in the file. */
  readonly keywords: readonly string[];
  readonly band: Band;
  /** The heading of a band's column. */
  readonly heading: (nm: number) => string;
  readonly scale: 1 | 100;
}

export const CGATS_DEFAULTS: CgatsOptions = {
  kind: "lab",
  separator: "\t",
  keywords: [
    'WEIGHTING_FUNCTION "ILLUMINANT, D65"',
    'WEIGHTING_FUNCTION "OBSERVER, 10 degree"',
    'MEASUREMENT_GEOMETRY "45/0"',
  ],
  band: TEN_NM,
  heading: (nm) => `SPECTRAL_NM${nm}`,
  scale: 1,
};

/** One table of a CGATS text. */
export function cgatsTable(samples: readonly ExampleSample[], given: Partial<CgatsOptions> = {}): string {
  const { kind, separator, keywords, band, heading, scale } = { ...CGATS_DEFAULTS, ...given };
  const nms = wavelengths(band);
  const figures = (sample: ExampleSample): string[] => {
    if (kind === "spectral") return nms.map((nm) => (exampleReflectance(sample, nm) * scale).toFixed(5));
    return [sample.L, sample.a, sample.b].map((value) => value.toFixed(2));
  };
  const colour = kind === "spectral" ? nms.map(heading) : kind === "lab" ? ["LAB_L", "LAB_A", "LAB_B"] : [];
  const fields = ["SAMPLE_ID", "SAMPLE_NAME", ...(kind === "xyz" ? ["XYZ_X", "XYZ_Y", "XYZ_Z"] : colour)];
  const rows = samples.map((sample, i) => [String(i + 1), `"${sample.name}"`, ...figures(sample)]);
  return [
    ...keywords,
    `NUMBER_OF_FIELDS ${fields.length}`,
    "BEGIN_DATA_FORMAT",
    fields.join(separator),
    "END_DATA_FORMAT",
    `NUMBER_OF_SETS ${rows.length}`,
    "BEGIN_DATA",
    ...rows.map((row) => row.join(separator)),
    "END_DATA",
    "",
  ].join("\n");
}

/** A whole CGATS text: its mark, who is said to have made it, and its tables. */
export function cgatsFile(...tables: readonly string[]): string {
  return [
    "CGATS.17",
    'ORIGINATOR "an invented example"',
    "# no instrument wrote this",
    tables.join("\n"),
  ].join("\n");
}

/** A plain table of Lab. */
export function labCsv(samples: readonly ExampleSample[], separator = ",", decimal = "."): string {
  const number = (value: number) => value.toFixed(2).replace(".", decimal);
  const rows = samples.map(({ name, L, a, b }) => [name, number(L), number(a), number(b)]);
  return [["Name", "L*", "a*", "b*"], ...rows].map((row) => row.join(separator)).join("\n");
}

/** A plain table of spectra. */
export function spectralCsv(samples: readonly ExampleSample[], scale: 1 | 100, band: Band = TEN_NM): string {
  const nms = wavelengths(band);
  const rows = samples.map((sample) => [
    sample.name,
    ...nms.map((nm) => (exampleReflectance(sample, nm) * scale).toFixed(4)),
  ]);
  return [["Name", ...nms.map((nm) => `${nm} nm`)], ...rows].map((row) => row.join(",")).join("\n");
}

export interface Cxf3Options {
  readonly values: "lab" | "spectral" | "both";
  readonly light: string;
  readonly observer: string;
  readonly geometry: string;
  readonly band: Band;
}

export const CXF3_DEFAULTS: Cxf3Options = {
  values: "both",
  light: "D65",
  observer: "10_Degree",
  geometry:
    "<cc:SingleAngle><cc:SingleAngleConfiguration>Annular</cc:SingleAngleConfiguration>" +
    "<cc:IlluminationAngle>45</cc:IlluminationAngle><cc:MeasurementAngle>0</cc:MeasurementAngle></cc:SingleAngle>",
  band: TEN_NM,
};

/** A CxF3 text; its elements as ISO 17972-1 names them (from memory and from public files). */
export function cxf3File(samples: readonly ExampleSample[], given: Partial<Cxf3Options> = {}): string {
  const { values, light, observer, geometry, band } = { ...CXF3_DEFAULTS, ...given };
  const objects = samples.map((sample, i) => {
    const reflectances = wavelengths(band).map((nm) => exampleReflectance(sample, nm).toFixed(6));
    const spectrum =
      values === "lab"
        ? ""
        : `<cc:ReflectanceSpectrum ColorSpecification="S1" StartWL="${band.firstNm}">${reflectances.join(" ")}</cc:ReflectanceSpectrum>`;
    const lab =
      values === "spectral"
        ? ""
        : `<cc:ColorCIELab ColorSpecification="S1"><cc:L>${sample.L}</cc:L><cc:A>${sample.a}</cc:A><cc:B>${sample.b}</cc:B></cc:ColorCIELab>`;
    return `<cc:Object ObjectType="Standard" Name="${sample.name}" Id="O${i}"><cc:ColorValues>${spectrum}${lab}</cc:ColorValues></cc:Object>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="urn:an-invented-example">
<cc:FileInformation><cc:Creator>an invented example &amp; nothing else</cc:Creator></cc:FileInformation>
<cc:Resources>
<cc:ObjectCollection>
${objects.join("\n")}
</cc:ObjectCollection>
<cc:ColorSpecificationCollection>
<cc:ColorSpecification Id="S1">
<cc:TristimulusSpec><cc:Illuminant>${light}</cc:Illuminant><cc:Observer>${observer}</cc:Observer></cc:TristimulusSpec>
<cc:MeasurementSpec><cc:MeasurementType>Spectrum_Reflectance</cc:MeasurementType>
<cc:GeometryChoice>${geometry}</cc:GeometryChoice>
<cc:WavelengthRange StartWL="${band.firstNm}" Increment="${band.stepNm}"/></cc:MeasurementSpec>
</cc:ColorSpecification>
</cc:ColorSpecificationCollection>
</cc:Resources>
</cc:CxF>
`;
}

/** Bytes of a text in UTF-8. */
export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
