/** XML text to a plain tree, through fast-xml-parser with everything off that an exchange file does not need. */
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { DEEPEST_XML } from "./limits.ts";

/** Names are without their namespace's prefix: CxF files choose their own. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Text of the element itself, without that of its children. */
  readonly text: string;
}

export type XmlTree =
  | { readonly ok: true; readonly root: XmlElement }
  | {
      readonly ok: false;
      readonly code:
        | "readings-xml-declares-a-type"
        | "readings-xml-not-well-formed"
        | "readings-xml-too-deep"
        | "readings-xml-not-one-root";
      readonly line: number | null;
    };

const TEXT = "#text";
const ATTRIBUTES = ":@";
const PREFIX = "@";

/**
 * Ordered lists instead of objects keyed by the file's names, so that no name can reach a prototype; numbers left as
 * text, since we judge them ourselves; fixed lists of entities only, with a limit on how much they give (the parser's switch
 * for numbered characters, which names in other languages need, brings the named ones of HTML with it).
 */
const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: PREFIX,
  removeNSPrefix: true,
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: true,
  ignoreDeclaration: true,
  ignorePiTags: true,
  htmlEntities: true,
  processEntities: {
    enabled: true,
    maxEntityCount: 1,
    maxTotalExpansions: 100_000,
    maxExpandedLength: 1_000_000,
  },
  maxNestedTags: DEEPEST_XML,
  // Its default renames such a tag; here names are never keys.
  onDangerousProperty: (name: string) => name,
});

type Node = Readonly<Record<string, unknown>>;

function elementFrom(node: Node): XmlElement | null {
  const name = Object.keys(node).find((key) => key !== ATTRIBUTES);
  if (name === undefined || name === TEXT) return null;
  const given = node[ATTRIBUTES];
  const attributes = new Map<string, string>();
  if (typeof given === "object" && given !== null)
    for (const [key, value] of Object.entries(given)) attributes.set(key.slice(PREFIX.length), String(value));
  const content = Array.isArray(node[name]) ? (node[name] as Node[]) : [];
  const children: XmlElement[] = [];
  const texts: string[] = [];
  for (const child of content) {
    const element = elementFrom(child);
    if (element !== null) children.push(element);
    else if (TEXT in child) texts.push(String(child[TEXT]));
  }
  return { name, attributes, children, text: texts.join(" ").trim() };
}

/**
 * The tree of `text`, or why there is none. A document type declaration is refused unread: entities of one's own are
 * how small files grow without bound, and no exchange file needs them.
 */
export function xmlTree(text: string): XmlTree {
  const doctype = /<!DOCTYPE/i.exec(text);
  if (doctype !== null)
    return { ok: false, code: "readings-xml-declares-a-type", line: lineAt(text, doctype.index) };
  try {
    const valid = XMLValidator.validate(text);
    if (valid !== true) return { ok: false, code: "readings-xml-not-well-formed", line: valid.err.line };
    const nodes: unknown = parser.parse(text);
    const roots = (Array.isArray(nodes) ? (nodes as Node[]) : [])
      .map(elementFrom)
      .filter((root) => root !== null);
    const [root] = roots;
    return root === undefined || roots.length > 1
      ? { ok: false, code: "readings-xml-not-one-root", line: null }
      : { ok: true, root };
  } catch (error) {
    // The parser throws on nesting beyond its limit and on what its validator let pass.
    const isTooDeep = error instanceof Error && /nested tags/i.test(error.message);
    return {
      ok: false,
      code: isTooDeep ? "readings-xml-too-deep" : "readings-xml-not-well-formed",
      line: null,
    };
  }
}

function lineAt(text: string, index: number): number {
  let line = 1;
  for (let i = text.indexOf("\n"); i >= 0 && i < index; i = text.indexOf("\n", i + 1)) line++;
  return line;
}

/** The first child of that name. */
export function childOf(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((child) => child.name === name);
}

/** All elements of that name below `element`, in order. */
export function allBelow(element: XmlElement, name: string): XmlElement[] {
  const found: XmlElement[] = [];
  const collect = ({ children }: XmlElement): void => {
    for (const child of children) {
      if (child.name === name) found.push(child);
      if (child.children.length > 0) collect(child);
    }
  };
  collect(element);
  return found;
}
