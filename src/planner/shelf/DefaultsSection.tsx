/** How the shop works: its name and money, its units, its instrument, its limits and prices. */
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { GEOMETRIES, ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";
import { LENGTHS, MASSES, TEMPERATURES, THREAD_COUNTS } from "../words/shelfWords.ts";
import { InkRoomDefaults } from "./InkRoomDefaults.tsx";
import { TestingDefaults } from "./TestingDefaults.tsx";
import { ladderSentence, printLadder, readLadder } from "./typedLists.ts";
import { useShelf } from "./useShelf.ts";

const MOST_PIECES = 1_000_000;
const HIGHEST_PRICE = 1_000_000;

const PRICES: readonly { readonly key: keyof ShopDefaults["prices"]; readonly label: string }[] = [
  { key: "print", label: "A print" },
  { key: "polyesterSurcharge", label: "More for polyester over half" },
  { key: "screen", label: "Screen and film" },
  { key: "inkChange", label: "Ink change" },
  { key: "testPrint", label: "Test print" },
  { key: "pressHour", label: "An hour of the press" },
];

export function DefaultsSection() {
  const { shelf, units: shown, changeDefaults } = useShelf();
  const { defaults } = shelf;
  const { units, instrument, prices } = defaults;
  const setUnits = (part: Partial<ShopDefaults["units"]>) => changeDefaults({ units: { ...units, ...part } });
  const setViewing = (part: Partial<ShopDefaults["instrument"]["viewing"]>) =>
    changeDefaults({ instrument: { ...instrument, viewing: { ...instrument.viewing, ...part } } });
  return (
    <div className="shelf__defaults">
      <fieldset className="fields-block">
        <legend>Shop</legend>
        <div className="fields">
          <TextEntry
            label="Shop name"
            value={defaults.shopName}
            maxLength={120}
            onCommit={(shopName) => changeDefaults({ shopName })}
          />
          <TextEntry
            label="Currency"
            value={defaults.currency}
            maxLength={8}
            onCommit={(currency) => changeDefaults({ currency })}
          />
        </div>
      </fieldset>
      <fieldset className="fields-block">
        <legend>Units</legend>
        <p className="entry__hint">Only what is shown changes; what is stored stays as it was entered.</p>
        <div className="fields">
          <Choice
            label="Temperature"
            value={units.temperature}
            options={TEMPERATURES}
            onChange={(temperature) => setUnits({ temperature })}
          />
          <Choice
            label="Length"
            value={units.length}
            options={LENGTHS}
            onChange={(length) => setUnits({ length })}
          />
          <Choice
            label="Thread count"
            value={units.threadCount}
            options={THREAD_COUNTS}
            onChange={(threadCount) => setUnits({ threadCount })}
          />
          <Choice label="Mass" value={units.mass} options={MASSES} onChange={(mass) => setUnits({ mass })} />
        </div>
      </fieldset>
      <fieldset className="fields-block">
        <legend>Instrument</legend>
        <p className="entry__hint">
          What a new reading starts with. Readings keep what they were made under.
        </p>
        <div className="fields">
          <Choice
            label="Light"
            value={instrument.viewing.illuminant}
            options={ILLUMINANTS}
            onChange={(illuminant) => setViewing({ illuminant })}
          />
          <Choice
            label="Observer"
            value={instrument.viewing.observer}
            options={OBSERVERS}
            onChange={(observer) => setViewing({ observer })}
          />
          <Choice
            label="Geometry"
            value={instrument.geometry}
            options={GEOMETRIES}
            onChange={(geometry) => changeDefaults({ instrument: { ...instrument, geometry } })}
          />
        </div>
      </fieldset>
      <fieldset className="fields-block">
        <legend>Tints and limits</legend>
        <div className="fields">
          <TextEntry
            label="Tint ladder, %"
            value={printLadder(defaults.tintLadder)}
            maxLength={200}
            required={ladderSentence}
            hint="The steps that the shop mixes, as 0; 0.1; 0.25."
            check={(text) => (readLadder(text) === null ? ladderSentence : null)}
            onCommit={(text) => {
              const tintLadder = readLadder(text);
              if (tintLadder !== null) changeDefaults({ tintLadder });
            }}
          />
          <NumberEntry
            label="Test print needed above"
            value={defaults.testAboveCount}
            unit="pieces"
            whole
            min={0}
            max={MOST_PIECES}
            hint="Of a dyed polyester never printed in its lot."
            onCommit={(testAboveCount) => changeDefaults({ testAboveCount })}
          />
          <PercentEntry
            label="Refused, of what is out of band"
            fraction={defaults.refusedFraction}
            onCommit={(refusedFraction) => changeDefaults({ refusedFraction })}
          />
          <PercentEntry
            label="Owed for a customer's piece"
            fraction={defaults.liableFraction}
            hint="Of its price, where it is spoiled. Your terms decide."
            onCommit={(liableFraction) => changeDefaults({ liableFraction })}
          />
        </div>
      </fieldset>
      <TestingDefaults testing={defaults.testing} onChange={(testing) => changeDefaults({ testing })} />
      <InkRoomDefaults defaults={defaults} units={shown} onChange={changeDefaults} />
      <fieldset className="fields-block">
        <legend>Prices</legend>
        <div className="fields">
          {PRICES.map(({ key, label }) => (
            <NumberEntry
              key={key}
              label={label}
              value={prices[key]}
              {...(defaults.currency === "" ? {} : { unit: defaults.currency })}
              min={0}
              max={HIGHEST_PRICE}
              onCommit={(price) => changeDefaults({ prices: { ...prices, [key]: price } })}
            />
          ))}
        </div>
      </fieldset>
    </div>
  );
}
