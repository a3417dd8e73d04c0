/** Turns a schema's findings into problems: a code and the path of the field, no sentences. */
import type { z } from "zod";
import type { Problem } from "../job/problem.ts";

/** More than this helps nobody; the first ones name the cause. */
const MOST_PROBLEMS = 50;

/** A path as a printer of JSON would write it: job.lines[3].garmentLotId. */
export function pathOf(parts: readonly PropertyKey[]): string {
  let path = "";
  for (const part of parts) {
    if (typeof part === "number") path += `[${part}]`;
    else path += path === "" ? String(part) : `.${String(part)}`;
  }
  return path;
}

/** What lies at a path of an unparsed value; undefined where the path leads nowhere. */
function valueAt(root: unknown, parts: readonly PropertyKey[]): unknown {
  let value = root;
  for (const part of parts) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[part];
  }
  return value;
}

function codeOf(issue: z.core.$ZodIssue, found: unknown): string {
  if (found === undefined && issue.code !== "unrecognized_keys") return "missing-field";
  switch (issue.code) {
    case "unrecognized_keys":
      return "unknown-field";
    case "invalid_type":
      return "wrong-type";
    case "too_small":
    case "too_big":
      return "out-of-range";
    case "invalid_value":
    case "invalid_union":
      return "not-a-choice";
    case "custom":
      return typeof issue.params?.code === "string" ? issue.params.code : "wrong-value";
    default:
      return "wrong-form";
  }
}

/** What would have been right, in few words of data: limits, the allowed choices, the wanted type. */
function detailOf(issue: z.core.$ZodIssue): string | undefined {
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.join(", ");
    case "invalid_type":
      return issue.expected;
    case "too_small":
      return `at least ${issue.minimum}`;
    case "too_big":
      return `at most ${issue.maximum}`;
    case "invalid_value":
      return issue.values.map(String).join(", ");
    case "invalid_format":
      return issue.format;
    default:
      return undefined;
  }
}

/**
 * The problems of a value that a schema refused.
 *
 * @param issues the schema's findings
 * @param root the value that was parsed, to tell a missing field from a wrong one
 * @param prefix path of `root` in the file, "" for the whole file
 */
export function problemsFromIssues(
  issues: readonly z.core.$ZodIssue[],
  root: unknown,
  prefix: string,
): Problem[] {
  return issues.slice(0, MOST_PROBLEMS).map((issue) => {
    const where = pathOf(prefix === "" ? issue.path : [prefix, ...issue.path]);
    const detail = detailOf(issue);
    const code = codeOf(issue, valueAt(root, issue.path));
    return detail === undefined ? { code, where } : { code, where, detail };
  });
}
