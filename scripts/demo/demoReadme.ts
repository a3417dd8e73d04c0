/** The README that lies beside the demo data: where each number is from. */
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import { GARMENTS } from "./garments.ts";
import { NOISE_SD, NOISE_SEED } from "./records.ts";
import { TRUE_LN_SURPRISE } from "./trueSurprises.ts";

export function demoReadme(): string {
  const rows = GARMENTS.map(
    ({ key, style, colourway, mill, pieces }) =>
      `| ${key} | ${style}, ${colourway}, ${mill} | ${pieces} | ${TRUE_LN_SURPRISE[key]} |`,
  );
  return `# Demo data

Made by \`npm run demo\` (scripts/demo). Do not edit these files; edit the script and make them anew. A test holds
them equal to what the script makes.

Everything here is invented: the print shop, the customer, the mills, the garments, their colours and lots, the
inks, the prices and the dates. No number was measured on a real garment or ink.

| file | what it is |
| --- | --- |
| verrowmoor-vm-217.tonebench.json | job VM-217 with the whole library of Ostrelle Print Room, as an archive of version ${ARCHIVE_VERSION} |

## Where the numbers are from
- Bare colours, pieces and prices of the twelve garments, target bands, print sizes, deposits: the project's own
  table for the demo job, invented. Sizes: shares of 15, 30, 30, 17 and 8 %, rounded so that they sum to the pieces.
- Strength and haze of the bases: the model's invented starting values. Largest fractions, densities, prices per kg,
  masstones and strengths of the coloured inks: invented.
- Cure temperatures and times, highest temperatures and hazards: examples only. Use your ink maker's data sheets.
- Weighed deposits: invented, 24 g/m² through 61-64 (ten pieces) and 13.92 g/m² through 90-48 (a mean) at 1.2 g/cm³.
- Spare pieces to print tests on (8 of a line, 6 of a small one), an hour of the press, how tests
  are made (4 in a day, a day of rest, 6 pairs on 2 pieces) and that the shop owes a customer's spoiled piece in full:
  invented. Every ink stands in the shop.
- Lots of the inks, the weighing of the two black masters and what is left of them, scales, pots and minutes: invented.
- Readings of the test prints (the approved one on G03 and one earlier lot each of G07 and G08): what the predictor gives for that garment with the true surprise below, plus normal reading noise with a standard deviation
  of ${NOISE_SD.L} in L* and ${NOISE_SD.a} in a* and b*, seed ${NOISE_SEED}, rounded to two digits. So the demo shows how the program
  works; it cannot show that the model is right. The print on the earlier G08 was read after an hour, a day and three
  days; its L* is lowered by the invented drift of 0.5 and 0.9, as if dye had moved into the ink.
- What the approval says the planner predicted: what model version 1 said without any print, kept as it was said.
- Ids: hashes of names, the same on every run. Times: fixed.

## What the demo's cloth really does
The true surprise ε, in ln of the wet-out gain. It is stated here and in the script, and never stored in the job:
finding it out is what test prints are for.

| | garment | pieces | true ε |
| --- | --- | --- | --- |
${rows.join("\n")}

G04 was sent in place of G03. Bare, the two differ by less than a ΔE00 of 0.6, which hardly anyone sees; printed with
the approved mix, G04 comes out about 2.6 times as dark.
`;
}
