/** CxF3 files: spectra and Lab with their specifications, and what XML may not do. Examples are invented (exampleFiles.ts). */
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { readCxf3 } from "../../../src/exchange/readings/cxf3.ts";
import { NOTHING_ANSWERED, type ReadingsResult } from "../../../src/exchange/readings/readSample.ts";
import { cxf3File, EXAMPLE_SAMPLES, exampleReflectance, TEN_NM, wavelengths } from "./exampleFiles.ts";

const read = (text: string) => readCxf3(text, NOTHING_ANSWERED);

function taken(result: ReadingsResult) {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problems)}`);
  return result;
}

const codes = (result: ReadingsResult) => (result.ok ? [] : result.problems.map(({ code }) => code));
const SPHERE = (gloss: string) => `<cc:SphereGeometry>${gloss}</cc:SphereGeometry>`;

describe("a CxF3 file", () => {
  it("gives Lab with the conditions of its specification", () => {
    const result = taken(read(cxf3File(EXAMPLE_SAMPLES, { values: "lab" })));
    expect(result.samples.map(({ name, lab }) => ({ name, ...lab }))).toEqual(EXAMPLE_SAMPLES);
    expect(result.samples[0]).toMatchObject({
      light: "D65",
      observer: "10deg",
      geometry: "45:0",
      where: "objects[0]",
    });
    expect(result.toAsk).toEqual([]);
    expect(result.warnings).toEqual([]);
  });

  it("gives spectra on the grid, with no light asked for", () => {
    const result = taken(read(cxf3File(EXAMPLE_SAMPLES, { values: "spectral", light: "our booth" })));
    expect(result.toAsk).toEqual([]);
    for (const [band, nm] of wavelengths(TEN_NM).entries())
      expect(result.samples[1]?.spectrum?.reflectance[band]).toBeCloseTo(
        exampleReflectance(EXAMPLE_SAMPLES[1]!, nm),
        6,
      );
  });

  it("joins the spectrum and the Lab of one object, and says where they disagree", () => {
    const spectral = taken(read(cxf3File(EXAMPLE_SAMPLES.slice(0, 1), { values: "spectral" })));
    const reflectance = Float64Array.from(spectral.samples[0]?.spectrum?.reflectance ?? []);
    const lab = labFromReflectance(reflectance, weightsFor({ illuminant: "D65", observer: "10deg" }));
    const agreeing = taken(read(cxf3File([{ name: "x", ...lab }])));
    // The curve is made from L and a, so a sample of its own Lab has another curve: the first one's is put in.
    const curve = /<cc:ReflectanceSpectrum[\s\S]*?<\/cc:ReflectanceSpectrum>/;
    const own = curve.exec(cxf3File(EXAMPLE_SAMPLES.slice(0, 1)))?.[0] ?? "";
    const joined = taken(read(cxf3File([{ name: "x", ...lab }]).replace(curve, own)));
    expect(agreeing.samples).toHaveLength(1);
    expect(joined.samples).toHaveLength(1);
    expect(joined.warnings).toEqual([]);
    const other = taken(read(cxf3File([{ name: "x", ...lab, L: lab.L + 3 }]).replace(curve, own)));
    expect(other.warnings.map(({ code }) => code)).toEqual(["readings-lab-unlike-spectrum"]);
  });

  it.each([
    ["gloss included", SPHERE("Specular_Included"), "specular-included"],
    ["gloss excluded", SPHERE("Specular_Excluded"), "specular-excluded"],
    ["an element of its own within", SPHERE("<cc:X>Specular_Excluded</cc:X>"), "specular-excluded"],
    ["a sphere that says no more", SPHERE("Diffuse"), null],
    ["several angles", "<cc:MultiAngle/>", null],
    [
      "25 degrees",
      "<cc:SingleAngle><cc:IlluminationAngle>45</cc:IlluminationAngle><cc:MeasurementAngle>25</cc:MeasurementAngle></cc:SingleAngle>",
      null,
    ],
  ])("knows the geometry of %s, or asks", (_name, geometry, expected) => {
    const result = taken(read(cxf3File(EXAMPLE_SAMPLES, { geometry })));
    expect(result.samples[0]?.geometry).toBe(expected);
    expect(result.toAsk).toEqual(expected === null ? ["geometry"] : []);
    expect(result.warnings.filter(({ code }) => code === "readings-unclear")).toHaveLength(
      expected === null ? 1 : 0,
    );
  });

  it("asks for the geometry behind a polarising filter", () => {
    const text = cxf3File(EXAMPLE_SAMPLES).replace(
      "<cc:WavelengthRange",
      "<cc:Device><cc:DevicePolarization>true</cc:DevicePolarization></cc:Device><cc:WavelengthRange",
    );
    expect(taken(read(text)).toAsk).toEqual(["geometry"]);
  });

  it("makes a sample of every value where an object has two spectra, as with gloss and without", () => {
    const text = cxf3File(EXAMPLE_SAMPLES.slice(0, 1), { values: "spectral" });
    const spectrum = /<cc:ReflectanceSpectrum.*<\/cc:ReflectanceSpectrum>/.exec(text)?.[0] ?? "";
    const second = text.replace(spectrum, spectrum + spectrum.replace('"S1"', '"S2"')).replace(
      "</cc:ColorSpecificationCollection>",
      `<cc:ColorSpecification Id="S2"><cc:MeasurementSpec><cc:GeometryChoice>${SPHERE("Specular_Included")}</cc:GeometryChoice>
         <cc:WavelengthRange StartWL="380" Increment="10"/></cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection>`,
    );
    const { samples } = taken(read(second));
    expect(samples.map(({ name, geometry }) => [name, geometry])).toEqual([
      ["G03 bare 1 S1", "45:0"],
      ["G03 bare 1 S2", "specular-included"],
    ]);
  });

  it("asks where a named specification is not there, and passes over objects without readings", () => {
    const text = cxf3File(EXAMPLE_SAMPLES, { values: "lab" })
      .replace('Specification Id="S1"', 'Specification Id="S9"')
      .replace("<cc:ObjectCollection>", '<cc:ObjectCollection><cc:Object Name="ink" Id="I"/>');
    const result = taken(read(text));
    expect(result.toAsk).toEqual(["light", "observer", "geometry"]);
    expect(result.warnings.map(({ code }) => code)).toEqual([
      "readings-specification-missing",
      "readings-objects-passed-over",
    ]);
  });
});

describe("a CxF3 file with something wrong", () => {
  const good = cxf3File(EXAMPLE_SAMPLES);

  it.each([
    ["cut short", good.slice(0, 2000), "readings-xml-not-well-formed"],
    ["of another kind", "<svg><g/></svg>", "readings-xml-not-cxf"],
    ["with a value that is no number", good.replace("27.44", "27,44"), "readings-not-a-number"],
    ["with a value missing", good.replace("<cc:L>27.44</cc:L>", ""), "readings-value-missing"],
    ["without readings", good.replaceAll(/<cc:ColorValues>.*<\/cc:ColorValues>/g, ""), "readings-none"],
    ["without wavelengths", good.replace(/<cc:WavelengthRange[^>]*>/, ""), "readings-wavelengths-missing"],
    [
      "with an id twice",
      good.replaceAll(/(<cc:ColorSpecification Id[\s\S]*?<\/cc:ColorSpecification>)/g, "$1$1"),
      "readings-specification-twice",
    ],
    ["under light C", cxf3File(EXAMPLE_SAMPLES, { values: "lab", light: "C" }), "readings-light-not-offered"],
    ["with two roots", `${good}<b></b>`, "readings-xml-not-well-formed"],
    ["with a second, empty root", `${good}<b/>`, "readings-xml-not-one-root"],
    ["nested too deeply", `${"<a>".repeat(60)}${"</a>".repeat(60)}`, "readings-xml-too-deep"],
  ])("is refused when %s", (_name, text, code) => {
    expect(new Set(codes(read(text)))).toEqual(new Set([code]));
  });

  it("is refused unread where it declares a document type, so that entities cannot grow", () => {
    const doctype = `<!DOCTYPE x [<!ENTITY a "${"ha".repeat(20)}">${Array.from(
      { length: 9 },
      (_, i) => `<!ENTITY a${i} "${`&a${i === 0 ? "" : i - 1};`.repeat(10)}">`,
    ).join("")}]>`;
    expect(codes(read(good.replace("<cc:CxF", `${doctype}<cc:CxF`)))).toEqual([
      "readings-xml-declares-a-type",
    ]);
    expect(codes(read(good.replace("<cc:CxF", '<!doctype x SYSTEM "file:///x"><cc:CxF')))).toEqual([
      "readings-xml-declares-a-type",
    ]);
  });

  it.each(["hasOwnProperty", "toString", "__defineGetter__", "length"])(
    "takes an element called %s for any other name",
    (name) => {
      const odd = `<${name} polluted="yes" ${name}="1"><polluted>yes</polluted></${name}>`;
      const result = taken(read(good.replace("<cc:Resources>", `${odd}<cc:Resources>`)));
      expect(result.samples).toHaveLength(EXAMPLE_SAMPLES.length);
    },
  );

  it.each(["__proto__", "constructor", "prototype"])(
    "leaves prototypes alone where one is called %s",
    (name) => {
      for (const odd of [
        `<${name} polluted="yes"><polluted>yes</polluted></${name}>`,
        `<x ${name}="polluted"/>`,
      ]) {
        const result = read(good.replace("<cc:Resources>", `${odd}<cc:Resources>`));
        if (!result.ok) expect(codes(result)).toEqual(["readings-xml-not-well-formed"]);
        expect(Object.keys(Object.prototype)).toEqual([]);
        expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      }
    },
  );

  it("knows the entities of XML and numbered characters, and leaves unknown ones as they stand", () => {
    const text = cxf3File([{ name: "A &lt; B &amp; C &#x41; &own;", L: 50, a: 0, b: 0 }], { values: "lab" });
    expect(taken(read(text)).samples[0]?.name).toBe("A < B & C A &own;");
  });
});
