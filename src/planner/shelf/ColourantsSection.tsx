/** Colourants: what a percentage of each is a percentage of, and what colour it is. */
import { useState } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import { bareScreenColour } from "../../job/screenColour.ts";
import type { Colourant } from "../../job/shelfDocument.ts";
import { Choice } from "../controls/Choice.tsx";
import { Notice } from "../controls/Notice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { cssColour, useScreenGamut } from "../look/screenGamut.ts";
import { newId } from "../state/identity.ts";
import { percentWords } from "../words/garmentWords.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import {
  colourantProblem,
  LARGEST_NOTE,
  NOT_IN_STOCK,
  OPTICS_KINDS,
  STRENGTH_DEFINITIONS,
  strengthDefinitionWords,
} from "../words/shelfWords.ts";
import { CureEntry } from "./CureEntry.tsx";
import { DataSheetEntry } from "./DataSheetEntry.tsx";
import { InkLots } from "./InkLots.tsx";
import { MasstoneEntry } from "./MasstoneEntry.tsx";
import { PriceEntry } from "./PriceEntry.tsx";
import { missingOf, PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { type ShelfInUse, useShelf } from "./useShelf.ts";

type Definition = Colourant["strengthDefinition"];
type Kind = Colourant["optics"]["kind"];

/** What a colourant starts with: invented, and no cure. */
const NEW_COLOURANT: Omit<Colourant, "id" | "name" | "strengthDefinition" | "optics"> = {
  inStock: true,
  largestFraction: 1,
  lowCure: false,
  densityGramsPerCm3: 1.2,
  cure: { filmCelsius: null, seconds: null, note: "" },
  highestCelsius: null,
  hazards: null,
  lots: [],
  pricePerKg: null,
};

/** Nobody has said yet; such a colourant is not predicted. */
const NO_STRENGTH = 0;

const NOT_CHOSEN = { value: "", label: "choose…" } as const;
const DEFINITION_HINT =
  "A tint means nothing without it: 0.5 % of a concentrate is about ten times 0.5 % of an ink.";

export function ColourantsSection() {
  const inUse = useShelf();
  const { shelf, add, remove } = inUse;
  return (
    <ShelfRows
      list="colourants"
      rows={shelf.colourants.map((colourant) => ({
        id: colourant.id,
        name: colourant.name,
        summary: <Summary colourant={colourant} />,
        editor: <ColourantEditor colourant={colourant} inUse={inUse} />,
      }))}
      newItem={(onAdded) => (
        <NewColourant
          inUse={inUse}
          onAdd={(named) => {
            const id = newId();
            add("colourants", { ...NEW_COLOURANT, ...named, id });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const colourant = shelf.colourants.find((one) => one.id === id);
        if (colourant !== undefined)
          add("colourants", { ...colourant, id: copy, name: `${colourant.name}, copy`.slice(0, 120) });
        return copy;
      }}
      onRemove={(id) => remove("colourants", id)}
    />
  );
}

function Summary({ colourant }: { readonly colourant: Colourant }) {
  const { optics, strengthDefinition, largestFraction, inStock } = colourant;
  const gamut = useScreenGamut();
  const hex = optics.kind === "masstone" ? bareScreenColour(optics.masstone, gamut).hex : null;
  const limit = largestFraction < 1 ? `, up to ${percentWords(largestFraction)} of a mix` : "";
  return (
    <>
      {hex !== null && (
        <span className="shelf__colour surround" aria-hidden="true">
          <span className="swatch" style={{ backgroundColor: cssColour(hex, gamut) }} />
        </span>
      )}
      % of {strengthDefinitionWords(strengthDefinition)}
      {limit}
      {!inStock && `, ${NOT_IN_STOCK}`}
      {colourantProblem(colourant) !== null && <strong> ! not predicted yet</strong>}
    </>
  );
}

interface NewProps {
  readonly inUse: ShelfInUse;
  readonly onAdd: (colourant: Pick<Colourant, "name" | "strengthDefinition" | "optics">) => void;
}

function opticsOf(kind: Kind, masstone: ColourDocument | null): Colourant["optics"] | null {
  if (kind !== "masstone") return { kind };
  return masstone === null ? null : { kind, masstone, strengthPerUm: NO_STRENGTH };
}

function NewColourant({ inUse, onAdd }: NewProps) {
  const [name, setName] = useState("");
  const [definition, setDefinition] = useState<Definition | "">("");
  const [kind, setKind] = useState<Kind | "">("");
  const [masstone, setMasstone] = useState<ColourDocument | null>(null);
  const optics = kind === "" ? null : opticsOf(kind, masstone);
  return (
    <>
      <TextEntry
        label="Name"
        value={name}
        maxLength={120}
        required="A colourant needs a name."
        onCommit={setName}
      />
      <Choice
        label="Tints are percent of"
        value={definition}
        options={[NOT_CHOSEN, ...STRENGTH_DEFINITIONS]}
        hint={DEFINITION_HINT}
        onChange={setDefinition}
      />
      <Choice label="Colour" value={kind} options={[NOT_CHOSEN, ...OPTICS_KINDS]} onChange={setKind} />
      {kind === "masstone" && (
        <MasstoneEntry
          stored={masstone}
          instrument={inUse.shelf.defaults.instrument}
          onCommit={setMasstone}
        />
      )}
      <PutOnShelf
        missing={missingOf({
          "the name": name === "",
          "what its percentages are of": definition === "",
          "the colour": optics === null,
        })}
        onAdd={() => {
          if (definition !== "" && optics !== null) onAdd({ name, strengthDefinition: definition, optics });
        }}
      />
    </>
  );
}

function ColourantEditor({
  colourant,
  inUse,
}: {
  readonly colourant: Colourant;
  readonly inUse: ShelfInUse;
}) {
  const { shelf, units, change } = inUse;
  const { optics } = colourant;
  const [isChoosing, setIsChoosing] = useState(false);
  const set = (part: Partial<Omit<Colourant, "id">>) => change("colourants", colourant.id, part);
  const kind = isChoosing ? "masstone" : optics.kind;
  const problem = colourantProblem(colourant);
  function chooseKind(next: Kind): void {
    // A colour of its own is stored once there is a colour: until then the old kind stays.
    setIsChoosing(next === "masstone" && optics.kind !== "masstone");
    if (next !== "masstone") set({ optics: { kind: next } });
  }
  return (
    <>
      <div className="fields">
        <TextEntry
          label="Name"
          value={colourant.name}
          maxLength={120}
          required="A colourant needs a name."
          onCommit={(name) => set({ name })}
        />
        <Choice
          label="Tints are percent of"
          value={colourant.strengthDefinition}
          options={STRENGTH_DEFINITIONS}
          hint={DEFINITION_HINT}
          onChange={(strengthDefinition) => set({ strengthDefinition })}
        />
        <Choice label="Colour" value={kind} options={OPTICS_KINDS} onChange={chooseKind} />
        {optics.kind === "masstone" && !isChoosing && (
          <NumberEntry
            label="Tinting strength"
            value={optics.strengthPerUm === NO_STRENGTH ? null : optics.strengthPerUm}
            unit="per µm"
            min={0.000001}
            max={20}
            placeholder="not entered"
            hint="Absorption of the ready-made ink at 100 %, at its darkest wavelength."
            onCommit={(strengthPerUm) => set({ optics: { ...optics, strengthPerUm } })}
          />
        )}
        <PercentEntry
          label="Largest part of a mix"
          fraction={colourant.largestFraction}
          hint={LARGEST_NOTE}
          onCommit={(largestFraction) => set({ largestFraction })}
        />
        <NumberEntry
          label="Density"
          value={colourant.densityGramsPerCm3}
          unit="g/cm³"
          min={0.5}
          max={5}
          onCommit={(densityGramsPerCm3) => set({ densityGramsPerCm3 })}
        />
        <PriceEntry
          pricePerKg={colourant.pricePerKg}
          currency={shelf.defaults.currency}
          potMass={units.potMass}
          onChange={(pricePerKg) => set({ pricePerKg })}
        />
        <Tick label="In stock" checked={colourant.inStock} onChange={(inStock) => set({ inStock })} />
        <Tick label="Low-cure" checked={colourant.lowCure} onChange={(lowCure) => set({ lowCure })} />
      </div>
      {problem !== null && <Notice kind="caution">{sentenceForProblem(problem)}</Notice>}
      {kind === "masstone" && (
        <MasstoneEntry
          stored={optics.kind === "masstone" ? optics.masstone : null}
          instrument={shelf.defaults.instrument}
          onCommit={(masstone) => {
            setIsChoosing(false);
            const strengthPerUm = optics.kind === "masstone" ? optics.strengthPerUm : NO_STRENGTH;
            set({ optics: { kind: "masstone", masstone, strengthPerUm } });
          }}
        />
      )}
      <CureEntry cure={colourant.cure} temperature={units.temperature} onChange={(cure) => set({ cure })} />
      <DataSheetEntry
        highestCelsius={colourant.highestCelsius}
        hazards={colourant.hazards}
        temperature={units.temperature}
        onChange={set}
      />
      <InkLots list="colourants" itemId={colourant.id} lots={colourant.lots} />
    </>
  );
}
