/** Something to be read now: words with a sign before them, never a colour. */
import type { ReactNode } from "react";

const SIGNS = { note: "Note", caution: "Caution", problem: "Problem" } as const;

interface Props {
  readonly kind: keyof typeof SIGNS;
  readonly children: ReactNode;
  /** Read out as soon as it appears; for what follows an action, not for what is always there. */
  readonly announce?: boolean;
}

export function Notice({ kind, children, announce = false }: Props) {
  const role = announce ? (kind === "problem" ? "alert" : "status") : undefined;
  return (
    <div className="notice" data-kind={kind} role={role}>
      <span className="notice__sign">
        {kind === "note" ? "" : "! "}
        {SIGNS[kind]}
      </span>
      <div className="notice__words">{children}</div>
    </div>
  );
}
