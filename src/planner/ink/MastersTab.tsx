/** Master dilutions: what is at hand, and a new one weighed by a sheet of its own, dated, put on the shelf as poured. */
import { useState } from "react";
import { flushSync } from "react-dom";
import { pouredOf } from "../../job/inkRoom/poured.ts";
import { standing } from "../../job/standing.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { usePrinting } from "../look/usePrinting.ts";
import { amountWords } from "../words/inkFigures.ts";
import { DilutionCard } from "./DilutionCard.tsx";
import { MasterPaper } from "./MasterPaper.tsx";
import { NewDilution } from "./NewDilution.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

const STATES = {
  usable: "in date",
  expired: "! past its day, not offered",
  "no-date": "no day entered",
} as const;

export function MastersTab({ ink }: { readonly ink: InkRoomInUse }) {
  const { library } = ink.documents;
  const [isNew, setNew] = useState(false);
  const [printedId, setPrintedId] = useState<string | null>(null);
  const isPrinting = usePrinting();
  const dilutions = standing(library.dilutions).toReversed();
  const isPossible = ink.shelf.colourants.length > 0 && ink.shelf.bases.length > 0;
  const printed = dilutions.find(({ id }) => id === printedId);
  if (isPrinting && printed !== undefined) {
    return <MasterPaper dilution={printed} poured={pouredOf(printed, library.potEntries)} ink={ink} />;
  }
  const print = (id: string) => {
    // What is printed has to be there before the browser looks.
    flushSync(() => setPrintedId(id));
    window.print();
    setPrintedId(null);
  };
  return (
    <div className="ink__masters">
      <div className="ink__head">
        <p>
          A master is a colourant dispersed beforehand in a base, so that a small tint is weighed in grams and
          not in tenths of one. What is left is the shop's own count: sheets do not take it off.
        </p>
        {!isNew && (
          <ActionButton disabled={!isPossible} onClick={() => setNew(true)}>
            Weigh a new master
          </ActionButton>
        )}
      </div>
      {isNew && <NewDilution ink={ink} onDone={() => setNew(false)} />}
      {ink.room.masters.length === 0 ? (
        <p>No master is on the shelf.</p>
      ) : (
        <table className="ink__table">
          <caption className="unseen">Masters on the shelf</caption>
          <thead>
            <tr>
              <th scope="col">Master</th>
              <th scope="col">Made on</th>
              <th scope="col">Use by</th>
              <th scope="col">State</th>
              <th scope="col" className="ink__count">
                Left
              </th>
            </tr>
          </thead>
          <tbody>
            {ink.room.masters.map(({ master, name, state }) => (
              <tr key={master.id}>
                <th scope="row">{name}</th>
                <td data-label="Made on">{master.madeOn ?? "not entered"}</td>
                <td data-label="Use by">{master.expiresOn ?? "not entered"}</td>
                <td>{STATES[state]}</td>
                <td className="ink__count" data-label="Left">
                  {master.gramsLeft === null ? "not counted" : amountWords(master.gramsLeft, ink.units)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {dilutions.length > 0 && (
        <section className="ink__batches" aria-label="Masters that were weighed">
          {dilutions.map((dilution) => (
            <DilutionCard
              key={dilution.id}
              dilution={dilution}
              poured={pouredOf(dilution, library.potEntries)}
              ink={ink}
              onPrint={() => print(dilution.id)}
            />
          ))}
        </section>
      )}
    </div>
  );
}
