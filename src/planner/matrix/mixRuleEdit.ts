/** What becomes of a mix in the rules of the search: free, kept or left out; never two at once. */
import type { MixRules } from "../../job/jobDocument.ts";

export type MixFate = "free" | "kept" | "left out";

export function fateOf({ keptRecipes, forbiddenRecipes }: MixRules, key: string): MixFate {
  if (forbiddenRecipes.includes(key)) return "left out";
  return keptRecipes.includes(key) ? "kept" : "free";
}

export function withFate(rules: MixRules, key: string, fate: MixFate): MixRules {
  const without = (keys: readonly string[]) => keys.filter((one) => one !== key);
  const keptRecipes = without(rules.keptRecipes);
  const forbiddenRecipes = without(rules.forbiddenRecipes);
  return {
    ...rules,
    keptRecipes: fate === "kept" ? [...keptRecipes, key] : keptRecipes,
    forbiddenRecipes: fate === "left out" ? [...forbiddenRecipes, key] : forbiddenRecipes,
  };
}
