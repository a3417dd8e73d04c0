/** Keep a mix whatever the search finds, or leave it out: the same two buttons wherever a mix is named. */
import type { MixRules } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { fateOf, type MixFate, withFate } from "./mixRuleEdit.ts";

interface Props {
  readonly mixKey: string;
  readonly name: string;
  readonly rules: MixRules;
  readonly onRules: (change: (rules: MixRules) => MixRules) => void;
}

const BUTTONS: Readonly<Record<MixFate, readonly { readonly words: string; readonly to: MixFate }[]>> = {
  free: [
    { words: "Keep", to: "kept" },
    { words: "Do not use", to: "left out" },
  ],
  kept: [
    { words: "Keep no longer", to: "free" },
    { words: "Do not use", to: "left out" },
  ],
  "left out": [{ words: "Allow again", to: "free" }],
};

export function MixFateButtons({ mixKey, name, rules, onRules }: Props) {
  const fate = fateOf(rules, mixKey);
  return (
    <span className="mix-fate">
      {fate !== "free" && <strong>{fate === "kept" ? "kept" : "not used"}</strong>}
      {BUTTONS[fate].map(({ words, to }, index) => (
        // The button that was pressed keeps its place, and the focus, under its new words.
        <ActionButton
          // biome-ignore lint/suspicious/noArrayIndexKey: as the line above says
          key={index}
          weight="plain"
          onClick={() => onRules((now) => withFate(now, mixKey, to))}
        >
          {words} <span className="unseen">{name}</span>
        </ActionButton>
      ))}
    </span>
  );
}
