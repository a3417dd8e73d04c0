/** Parts of a view of which one is shown: the WAI-ARIA tabs pattern, one stop for the Tab key, arrows between. */
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from "react";

export interface TabOption {
  /** In the address. */
  readonly tab: string;
  readonly name: string;
}

interface Props {
  readonly label: string;
  readonly tabs: readonly TabOption[];
  /** Another than these, or none, opens the first. */
  readonly open: string | null;
  readonly onOpen: (tab: string) => void;
  readonly children: (tab: string) => ReactNode;
}

const NEXT: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowRight: (index, count) => (index + 1) % count,
  ArrowLeft: (index, count) => (index + count - 1) % count,
  Home: () => 0,
  End: (_index, count) => count - 1,
};

export function Tabs({ label, tabs, open, onOpen, children }: Props) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const at = Math.max(
    0,
    tabs.findIndex(({ tab }) => tab === open),
  );

  // A button inside a part may open another, and goes with its own: the keyboard goes on from the tab.
  const before = useRef(at);
  useEffect(() => {
    if (before.current === at) return;
    before.current = at;
    if (document.activeElement !== document.body) return;
    list.current?.querySelectorAll<HTMLElement>("[role='tab']")[at]?.focus();
  }, [at]);

  function onKeyDown(event: KeyboardEvent): void {
    const next = NEXT[event.key]?.(at, tabs.length);
    const wanted = next === undefined ? undefined : tabs[next];
    if (next === undefined || wanted === undefined) return;
    event.preventDefault();
    onOpen(wanted.tab);
    list.current?.querySelectorAll<HTMLElement>("[role='tab']")[next]?.focus();
  }

  return (
    <>
      <div className="tabs" role="tablist" aria-label={label} ref={list} onKeyDown={onKeyDown}>
        {tabs.map(({ tab, name }, index) => (
          <button
            key={tab}
            type="button"
            role="tab"
            id={`${id}-tab-${index}`}
            aria-selected={index === at}
            aria-controls={`${id}-panel`}
            tabIndex={index === at ? 0 : -1}
            onClick={() => onOpen(tab)}
          >
            {name}
          </button>
        ))}
      </div>
      <div id={`${id}-panel`} role="tabpanel" aria-labelledby={`${id}-tab-${at}`} className="tabs__panel">
        {children(tabs[at]?.tab ?? "")}
      </div>
    </>
  );
}
