/** The largest files that are let in, each of a kind that could make a careless reader take long. All invented. */
import { LARGEST_FILE_BYTES, LONGEST_XML } from "../../../src/exchange/readings/limits.ts";
import {
  bytesOf,
  cgatsFile,
  cgatsTable,
  cxf3File,
  type ExampleSample,
  labCsv,
  spectralCsv,
} from "./exampleFiles.ts";

export interface LargeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

function samples(count: number): ExampleSample[] {
  return Array.from({ length: count }, (_, i) => ({
    name: `patch ${i}`,
    L: 20 + (i % 60),
    a: i % 9,
    b: -(i % 7),
  }));
}

/** `head`, then `piece` as often as fits, then `tail`. */
function filled(head: string, piece: string, tail = "", size = LARGEST_FILE_BYTES): Uint8Array {
  const room = size - bytesOf(head).length - bytesOf(tail).length;
  return bytesOf(head + piece.repeat(Math.floor(room / bytesOf(piece).length)) + tail);
}

const filledXml = (head: string, piece: string, tail = "") => filled(head, piece, tail, LONGEST_XML);

const CGATS_HEAD = "CGATS.17\nBEGIN_DATA_FORMAT\nLAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n";
const CXF_HEAD = "<CxF><Resources><ObjectCollection>";
const CXF_TAIL = "</ObjectCollection></Resources></CxF>";

/** Honest files of many samples first, then hostile ones. */
export function largestFiles(): LargeFile[] {
  return [
    {
      name: "CGATS, 5000 spectra",
      bytes: bytesOf(cgatsFile(cgatsTable(samples(5000), { kind: "spectral" }))),
    },
    { name: "CSV, 5000 spectra", bytes: bytesOf(spectralCsv(samples(5000), 1)) },
    { name: "CSV, 5000 Lab", bytes: bytesOf(labCsv(samples(5000))) },
    { name: "CxF3, 1500 spectra with Lab", bytes: bytesOf(cxf3File(samples(1500))) },
    { name: "CGATS, rows of one digit", bytes: filled(CGATS_HEAD, "1 1 1\n", "END_DATA\n") },
    { name: "CGATS, one endless row", bytes: filled(CGATS_HEAD, "1 ", "\nEND_DATA\n") },
    { name: "CGATS, one endless row of tabs", bytes: filled(CGATS_HEAD, "1\t", "\nEND_DATA\n") },
    { name: "CGATS, quotes without end", bytes: filled(CGATS_HEAD, '"', "\nEND_DATA\n") },
    { name: "CGATS, many quotes", bytes: filled(CGATS_HEAD, '"a" ""', "\nEND_DATA\n") },
    { name: "CGATS, empty lines", bytes: filled("", "\n", "BEGIN_DATA_FORMAT\n") },
    { name: "CGATS, blanks", bytes: filled("BEGIN_DATA_FORMAT\n", " ", "x") },
    { name: "CGATS, keywords", bytes: filled("", "A B\n", "BEGIN_DATA_FORMAT\n") },
    { name: "CGATS, fields", bytes: filled("BEGIN_DATA_FORMAT\n", "NM400 ") },
    {
      name: "CGATS, tables",
      bytes: filled("", "BEGIN_DATA_FORMAT\nA\nEND_DATA_FORMAT\nBEGIN_DATA\nEND_DATA\n"),
    },
    { name: "CSV, one endless line", bytes: filled("L*,a*,b*\n", "1,") },
    { name: "CSV, rows of one digit", bytes: filled("L*,a*,b*\n", "1,1,1\n") },
    { name: "CSV, headings only", bytes: filled("", "L*,") },
    { name: "CSV, quotes", bytes: filled("L*,a*,b*\n", '"') },
    { name: "CSV, an open quote", bytes: filled('L*,a*,b*\n"', "1,1,1\n") },
    { name: "CSV, many quoted rows", bytes: filled("L*,a*,b*\n", '"1","1","1"\n') },
    { name: "CSV, empty lines", bytes: filled("L*,a*,b*\n", "\n") },
    { name: "CSV, rows that are not numbers", bytes: filled("L*,a*,b*\n", "x,y,z\n") },
    { name: "CSV, blanks before a letter", bytes: filled("L*,a*,b*\n1,1,", " ", "x\n") },
    { name: "CSV, nothing but blanks", bytes: filled("x", " ", "x") },
    {
      name: "CxF3, one spectrum without end",
      bytes: filledXml(
        `${CXF_HEAD}<Object Name="x"><ColorValues><ReflectanceSpectrum StartWL="400" Increment="10">`,
        "1 ",
        `</ReflectanceSpectrum></ColorValues></Object>${CXF_TAIL}`,
      ),
    },
    { name: "CxF3, empty objects", bytes: filledXml(CXF_HEAD, "<Object/>", CXF_TAIL) },
    { name: "XML, tags opened", bytes: filledXml("<CxF>", "<a>") },
    { name: "XML, tags", bytes: filledXml("<CxF>", "<a></a>", "</CxF>") },
    { name: "XML, attributes", bytes: filledXml("<CxF ", 'a="1" ', "></CxF>") },
    { name: "XML, one attribute without end", bytes: filledXml('<CxF a="', "x") },
    { name: "XML, brackets", bytes: filledXml("", "<") },
    { name: "XML, comments", bytes: filledXml("<CxF>", "<!-- -->", "</CxF>") },
    { name: "XML, a comment without end", bytes: filledXml("<CxF><!--", "-") },
    { name: "XML, literal text", bytes: filledXml("<CxF>", "<![CDATA[x]]>", "</CxF>") },
    { name: "XML, entities", bytes: filledXml("<CxF>", "&amp;", "</CxF>") },
    { name: "XML, numbered characters", bytes: filledXml("<CxF>", "&#x41;", "</CxF>") },
    { name: "XML, ampersands", bytes: filledXml("<CxF>", "&", "</CxF>") },
    { name: "XML, instructions", bytes: filledXml("<CxF>", "<?a b?>", "</CxF>") },
    { name: "XML, blanks in a tag", bytes: filledXml("<CxF", " ", "></CxF>") },
    {
      name: "noise",
      bytes: Uint8Array.from({ length: LARGEST_FILE_BYTES }, (_, i) => (i * 7919 + (i >> 7)) & 0xff),
    },
    { name: "zeros", bytes: new Uint8Array(LARGEST_FILE_BYTES) },
    {
      name: "letters in UTF-16",
      bytes: Uint8Array.from({ length: LARGEST_FILE_BYTES }, (_, i) => (i % 2 === 0 ? 65 : 0)),
    },
  ];
}
