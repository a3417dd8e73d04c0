/** A control that does something: a verb in words, never an icon. */
import type { ComponentProps } from "react";

interface Props extends Omit<ComponentProps<"button">, "type" | "className"> {
  /** `strong` for the one action of the moment; `plain` looks like the words it stands beside. */
  readonly weight?: "plain" | "normal" | "strong";
  readonly submit?: boolean;
}

export function ActionButton({ weight = "normal", submit = false, ...rest }: Props) {
  return <button {...rest} type={submit ? "submit" : "button"} className={`action action--${weight}`} />;
}
