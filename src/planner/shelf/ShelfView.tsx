/** The shelf: everything the shop owns and how it works, one list at a time, edited in place. */
import type { ComponentType } from "react";
import { useJobAddress } from "../address.ts";
import { Tabs } from "../controls/Tabs.tsx";
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

export default function ShelfView() {
  const { address, change } = useJobAddress();
  const { shopName } = useDocuments().library.shelf.defaults;
  return (
    <div className="view shelf panel">
      <div className="view__head">
        <h2>Shelf</h2>
        {shopName !== "" && <p>{shopName}</p>}
      </div>
      <Tabs label="Lists of the shelf" tabs={SECTIONS} open={address.tab} onOpen={(tab) => change({ tab })}>
        {(tab) => {
          const section = SECTIONS.find((one) => one.tab === tab);
          return section === undefined ? null : (
            <div className="shelf__section">
              <section.Component key={tab} />
            </div>
          );
        }}
      </Tabs>
    </div>
  );
}
