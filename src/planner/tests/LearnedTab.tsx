/** What was learned per style, mill, base and colourant; and, from about a hundred prints on, the shop's own scales. */
import { useEffect, useState } from "react";
import type { LearnedUnknown } from "../../core/evidence/learned.ts";
import type { ScaleEstimate } from "../../core/evidence/priorEstimate.ts";
import type { Documents } from "../../job/documents.ts";
import { changeDefaults } from "../../job/edits/shelf.ts";
import { priorScalesOf } from "../../job/evidenceInputs.ts";
import { learnedNames } from "../../job/recordBook/learnedNames.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { useLessons } from "../lessons.tsx";
import { useEngine } from "../services.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { learnedGroups, scaleRows } from "../words/learnedSentences.ts";

/** As core/evidence/priorEstimate: fewer records were seen to say nearly nothing of the scales. */
const FEWEST_FOR_SCALES = 100;

export function LearnedTab({ documents }: { readonly documents: Documents }) {
  const engine = useEngine();
  const { lessons, inputs } = useLessons();
  const [learned, setLearned] = useState<readonly LearnedUnknown[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew after each lesson
  useEffect(() => {
    let isWanted = true;
    engine.book.learned().then(
      (found) => {
        if (isWanted) setLearned(found);
      },
      () => {
        if (isWanted) setLearned([]);
      },
    );
    return () => {
      isWanted = false;
    };
  }, [engine, lessons]);
  if (learned === null) return <p role="status">Looking through the record book…</p>;
  if (learned.length === 0) return <p>No record teaches yet. Record a test print, and it is told here.</p>;
  const { library } = documents;
  const groups = learnedGroups(learned, learnedNames(library));
  return (
    <div className="tests__learned">
      <p>
        Against the values that the model starts with. What holds for a style also helps its next lot; what is
        a lot's own does not.
      </p>
      {groups.map(({ title, rows }) => (
        <section key={title} className="tests__group" aria-label={title}>
          <h3>{title}</h3>
          <table className="tests__table tests__table--learned">
            <thead className="unseen">
              <tr>
                <th scope="col">Of</th>
                <th scope="col">Taught</th>
                <th scope="col">Nine in ten</th>
                <th scope="col">From</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, who, what, range, prints }) => (
                <tr key={key}>
                  <th scope="row">{who}</th>
                  <td>{what}</td>
                  <td>{range !== "" && `${range} times, in nine of ten`}</td>
                  <td className="quiet">{prints}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      <LeftOut documents={documents} />
      <OwnScales
        documents={documents}
        teachingCount={lessons?.teachingCount ?? 0}
        key={inputs === null ? 0 : 1}
      />
    </div>
  );
}

/** Records that the model cannot take, so that nobody wonders why they change nothing. */
function LeftOut({ documents }: { readonly documents: Documents }) {
  const { inputs } = useLessons();
  const count = inputs?.leftOut.length ?? 0;
  if (count === 0) return null;
  const { testPrints } = documents.library;
  const prints =
    inputs?.leftOut.filter(({ recordId }) => testPrints.some(({ id }) => id === recordId)).length ?? 0;
  return (
    <p>
      ! {count} {count === 1 ? "entry teaches" : "entries teach"} nothing because the model cannot take{" "}
      {count === 1 ? "it" : "them"}: {prints} of test prints, {count - prints} of goods-in checks. Open a
      record in the book to see why.
    </p>
  );
}

function OwnScales(props: { readonly documents: Documents; readonly teachingCount: number }) {
  const { documents, teachingCount } = props;
  const engine = useEngine();
  const edit = usePlanner((state) => state.edit);
  const [estimate, setEstimate] = useState<ScaleEstimate | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const { shelf } = documents.library;
  const isOwn = shelf.defaults.priorScales !== null;
  const present = priorScalesOf(shelf) as unknown as Readonly<Record<string, number>>;
  const ask = async () => {
    setIsAsking(true);
    setEstimate(await engine.book.scales().catch(() => null));
    setIsAsking(false);
  };
  const use = (scales: ScaleEstimate["scales"] | null) => {
    edit((now) => changeDefaults(now, { priorScales: scales === null ? null : { ...scales } }));
    setEstimate(null);
  };
  return (
    <section className="tests__group" aria-label="How far garments differ in this shop">
      <h3>How far garments differ in this shop</h3>
      <p>
        {isOwn
          ? "The spreads rest on scales from this shop's own records."
          : "The spreads rest on the model's own scales: how far styles, mills and lots differ before any print."}
      </p>
      {teachingCount < FEWEST_FOR_SCALES ? (
        <p className="quiet">
          From about {FEWEST_FOR_SCALES} prints on, the shop's own records can tell; there are {teachingCount}
          .
        </p>
      ) : (
        estimate === null && (
          <div className="acts">
            <ActionButton disabled={isAsking} onClick={() => void ask()}>
              Estimate the scales from our records
            </ActionButton>
          </div>
        )
      )}
      {estimate !== null && (
        <>
          <table className="tests__table tests__table--figures">
            <thead>
              <tr>
                <th scope="col">Standard deviation, ln</th>
                <th scope="col">Now</th>
                <th scope="col">By our records</th>
                <th scope="col">Seen</th>
              </tr>
            </thead>
            <tbody>
              {scaleRows(estimate, present).map(({ name, now, own, count }) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>{now}</td>
                  <td>{own}</td>
                  <td>{count}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="acts">
            <ActionButton weight="strong" onClick={() => use(estimate.scales)}>
              Use our own scales
            </ActionButton>
            <ActionButton onClick={() => setEstimate(null)}>Leave them as they are</ActionButton>
          </div>
        </>
      )}
      {isOwn && (
        <div className="acts">
          <ActionButton onClick={() => use(null)}>Go back to the model's own scales</ActionButton>
        </div>
      )}
    </section>
  );
}
