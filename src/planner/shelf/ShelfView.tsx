/** The shelf: everything the shop owns and how it works, one list at a time, edited in place. */
import { type ComponentType, type KeyboardEvent, useId, useRef } from "react";
import { useJobAddress } from "../address.ts";
import { useDocuments } from "../state/usePlanner.ts";
import { BasesSection } from "./BasesSection.tsx";
import { ColourantsSection } from "./ColourantsSection.tsx";
import { DefaultsSection } from "./DefaultsSection.tsx";
import { MastersSection } from "./MastersSection.tsx";
import { MeshesSection } from "./MeshesSection.tsx";
import { SetUpsSection } from "./SetUpsSection.tsx";
import { SqueegeesSection } from "./SqueegeesSection.tsx";
import "./shelf.css";

interface Section {
  /** In the address. */
  readonly tab: string;
  readonly name: string;
  readonly Component: ComponentType;
}

const SECTIONS: readonly Section[] = [
  { tab: "bases", name: "Bases", Component: BasesSection },
  { tab: "colourants", name: "Colourants", Component: ColourantsSection },
  { tab: "masters", name: "Masters", Component: MastersSection },
  { tab: "meshes", name: "Meshes", Component: MeshesSection },
  { tab: "squeegees", name: "Squeegees", Component: SqueegeesSection },
  { tab: "set-ups", name: "Set-ups", Component: SetUpsSection },
  { tab: "defaults", name: "Defaults", Component: DefaultsSection },
];

const NEXT: Readonly<Record<string, (index: number) => number>> = {
  ArrowRight: (index) => (index + 1) % SECTIONS.length,
  ArrowLeft: (index) => (index + SECTIONS.length - 1) % SECTIONS.length,
  Home: () => 0,
  End: () => SECTIONS.length - 1,
};

export default function ShelfView() {
  const id = useId();
  const tabs = useRef<HTMLDivElement>(null);
  const { address, change } = useJobAddress();
  const { shopName } = useDocuments().library.shelf.defaults;
  const chosen = Math.max(
    0,
    SECTIONS.findIndex(({ tab }) => tab === address.tab),
  );
  const section = SECTIONS[chosen];
  if (section === undefined) return null;

  const open = (index: number) => change({ tab: SECTIONS[index]?.tab ?? null });

  function onKeyDown(event: KeyboardEvent): void {
    const next = NEXT[event.key]?.(chosen);
    if (next === undefined) return;
    event.preventDefault();
    open(next);
    tabs.current?.querySelectorAll<HTMLElement>("[role='tab']")[next]?.focus();
  }

  return (
    <div className="view shelf panel">
      <div className="view__head">
        <h2>Shelf</h2>
        {shopName !== "" && <p>{shopName}</p>}
      </div>
      <div
        className="shelf__tabs"
        role="tablist"
        aria-label="Lists of the shelf"
        ref={tabs}
        onKeyDown={onKeyDown}
      >
        {SECTIONS.map(({ name }, index) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`${id}-tab-${index}`}
            aria-selected={index === chosen}
            aria-controls={`${id}-panel`}
            tabIndex={index === chosen ? 0 : -1}
            onClick={() => open(index)}
          >
            {name}
          </button>
        ))}
      </div>
      <div
        id={`${id}-panel`}
        role="tabpanel"
        aria-labelledby={`${id}-tab-${chosen}`}
        className="shelf__section"
      >
        <section.Component key={section.name} />
      </div>
    </div>
  );
}
