/** Cure and safety: what each mix inherits from what the shop entered, and the limits cited for children's products. */
import type { Inherited } from "../../core/planning/ink/mixRestrictions.ts";
import { changeJob } from "../../job/edits/job.ts";
import type { InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { Notice } from "../controls/Notice.tsx";
import { Tick } from "../controls/Tick.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { ChildrensLines } from "../words/ChildrensLines.tsx";
import { CAUTIONS } from "../words/checklistSentences.ts";
import { temperatureWords } from "../words/inkFigures.ts";
import { restrictionSentence } from "../words/inkSentences.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

export function CureTab({ ink }: { readonly ink: InkRoomInUse }) {
  const edit = usePlanner((state) => state.edit);
  const { job } = ink.documents;
  return (
    <div className="ink__cure">
      <p>
        A mix inherits the most restrictive of its parts. Everything here is what the shop entered from its
        data sheets; where a part has nothing entered, the mix has nothing either.
      </p>
      {ink.room.batches.map((batch) => (
        <MixCure key={batch.mixId} batch={batch} ink={ink} />
      ))}
      <ul className="ink__sentences">
        {CAUTIONS.map((caution) => (
          <li key={caution}>! {caution}</li>
        ))}
      </ul>
      <section className="ink__batch" aria-labelledby="ink-children">
        <h3 id="ink-children">Children's products</h3>
        <Tick
          label="This job is for children"
          checked={job.forChildren}
          onChange={(forChildren) => edit((now) => changeJob(now, { forChildren }))}
        />
        {ink.room.childrensLines.length === 0 ? (
          <p className="quiet">Ticked, the published limits for children's products are listed here.</p>
        ) : (
          <ChildrensLines lines={ink.room.childrensLines} className="ink__sentences" />
        )}
      </section>
    </div>
  );
}

function MixCure({ batch, ink }: { readonly batch: InkBatch; readonly ink: InkRoomInUse }) {
  const { restrictions } = batch;
  const { units, nameOf } = ink;
  const entered = <Value,>(inherited: Inherited<Value>, words: (value: Value) => string) => (
    <InheritedWords inherited={inherited} words={words} nameOf={nameOf} />
  );
  return (
    <section className="ink__batch" aria-labelledby={`cure-${batch.mixId}`}>
      <h3 id={`cure-${batch.mixId}`}>{batch.mixName}</h3>
      <dl className="ink__facts">
        <div>
          <dt>Film has to reach</dt>
          <dd>{entered(restrictions.cureCelsius, (celsius) => temperatureWords(celsius, units))}</dd>
        </div>
        <div>
          <dt>for</dt>
          <dd>{entered(restrictions.cureSeconds, (seconds) => `${seconds}\u00a0s`)}</dd>
        </div>
        <div>
          <dt>never above</dt>
          <dd>{entered(restrictions.highestCelsius, (celsius) => temperatureWords(celsius, units))}</dd>
        </div>
        <div>
          <dt>Low-cure</dt>
          <dd>{{ all: "yes, all of it", some: "only part of it", none: "no" }[restrictions.lowCure]}</dd>
        </div>
        <div>
          <dt>Hazards</dt>
          <dd>
            {entered(restrictions.hazards, (hazards) =>
              hazards.length === 0 ? "none stated, as entered" : hazards.join("; "),
            )}
          </dd>
        </div>
        <div>
          <dt>Use by</dt>
          <dd>{restrictions.expiresOn.amongEntered ?? "no day entered"}</dd>
        </div>
      </dl>
      {restrictions.restrictions.length > 0 && (
        <Notice kind="caution">
          {restrictions.restrictions.map((one) => (
            <p key={one.code + one.itemIds.join()}>{restrictionSentence(one, { units, nameOf })}</p>
          ))}
        </Notice>
      )}
    </section>
  );
}

interface InheritedProps<Value> {
  readonly inherited: Inherited<Value>;
  readonly words: (value: Value) => string;
  readonly nameOf: (itemId: string) => string;
}

function InheritedWords<Value>({ inherited, words, nameOf }: InheritedProps<Value>) {
  const { value, amongEntered, missingItemIds } = inherited;
  if (value !== null) return words(value);
  const missing = `nothing entered for ${missingItemIds.map(nameOf).join(", ")}`;
  return amongEntered === null ? (
    missing
  ) : (
    <>
      not known: {missing}; of the others: {words(amongEntered)}
    </>
  );
}
