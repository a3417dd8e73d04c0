/**
 * Limits that the checklist of a children's product cites. Data, not advice: which of them apply to a product is for a
 * qualified laboratory and a lawyer to say.
 */

export type ChildrensLineCode =
  | "us-phthalates"
  | "us-lead-in-coating"
  | "us-lead-in-substrate"
  | "eu-phthalates-in-plasticised-material"
  | "eu-phthalates-in-toys"
  /** Old pots of base and additive may be from before the limits: look at their data sheets. */
  | "old-pots"
  | "not-legal-advice";

export interface ChildrensLine {
  readonly code: ChildrensLineCode;
  /** The provision; null for lines that are none. */
  readonly source: string | null;
  /** `read`: text of the provision seen when the design notes were made; `from memory`: not checked. */
  readonly status: "read" | "from memory" | "common practice";
  /** Largest mass fraction of the material; null for lines without a limit. */
  readonly limitMassFraction: number | null;
  /** Each substance by itself, or all together; null for lines without a limit. */
  readonly counted: "each" | "together" | null;
  readonly substances: readonly string[];
}

/** Lines added for a children's product, in the order they are shown. */
export const CHILDRENS_LINES: readonly ChildrensLine[] = [
  {
    code: "us-phthalates",
    source: "16 CFR 1307.3 (plasticised parts of children's toys and child care articles)",
    status: "read",
    limitMassFraction: 0.001,
    counted: "each",
    substances: ["DEHP", "DBP", "BBP", "DINP", "DIBP", "DPENP", "DHEXP", "DCHP"],
  },
  {
    code: "us-lead-in-coating",
    source: "CPSIA (lead in paint and surface coatings, 90 ppm)",
    status: "from memory",
    limitMassFraction: 90e-6,
    counted: "each",
    substances: ["lead"],
  },
  {
    code: "us-lead-in-substrate",
    source: "CPSIA (lead in accessible parts, 100 ppm)",
    status: "from memory",
    limitMassFraction: 100e-6,
    counted: "each",
    substances: ["lead"],
  },
  {
    code: "eu-phthalates-in-plasticised-material",
    source:
      "REACH Annex XVII entry 51, Regulation (EU) 2018/2005 (plasticised material, printed designs included)",
    status: "read",
    limitMassFraction: 0.001,
    counted: "together",
    substances: ["DEHP", "DBP", "BBP", "DIBP"],
  },
  {
    code: "eu-phthalates-in-toys",
    source: "REACH Annex XVII entry 52 (toys and childcare articles)",
    status: "read",
    limitMassFraction: 0.001,
    counted: "together",
    substances: ["DINP", "DIDP", "DNOP"],
  },
  {
    code: "old-pots",
    source: null,
    status: "common practice",
    limitMassFraction: null,
    counted: null,
    substances: [],
  },
  {
    code: "not-legal-advice",
    source: null,
    status: "common practice",
    limitMassFraction: null,
    counted: null,
    substances: [],
  },
];

/** The lines for a product: none unless it is for children. */
export function childrensLines(forChildren: boolean): readonly ChildrensLine[] {
  return forChildren ? CHILDRENS_LINES : [];
}
