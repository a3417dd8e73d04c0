/** The matrix of one print place: toolbar, grid, details, and the dialog about a mix. */
import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { chooseCandidate } from "../../job/edits/choices.ts";
import type { Place } from "../../job/jobDocument.ts";
import { useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { useLessons } from "../lessons.tsx";
import { useScreenGamut } from "../look/screenGamut.ts";
import { usePrinting } from "../look/usePrinting.ts";
import { useEngine } from "../services.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { mixName } from "../words/mixWords.ts";
import { DetailPane } from "./DetailPane.tsx";
import { EmptyPlace } from "./EmptyPlace.tsx";
import { FindMixes } from "./FindMixes.tsx";
import { LightPanel } from "./LightPanel.tsx";
import { MatrixGrid } from "./MatrixGrid.tsx";
import { MatrixPaper } from "./MatrixPaper.tsx";
import { MatrixToolbar, type OpenPanel } from "./MatrixToolbar.tsx";
import { MixDialogs, NEW_MIX } from "./MixDialogs.tsx";
import { type MatrixLine, matrixCandidates, matrixLines } from "./matrixInputs.ts";
import { OneGarment } from "./OneGarment.tsx";
import { PlacePanel } from "./PlacePanel.tsx";
import { garmentTitle } from "./RowHead.tsx";
import { TargetPanel } from "./TargetPanel.tsx";
import { useCellDetail } from "./useCellDetail.ts";
import { useMixSearch } from "./useMixSearch.ts";
import { hasRoomBeside, useNarrow } from "./useNarrow.ts";
import { usePredictedCells } from "./usePredictedCells.ts";
import { useSelectedCell } from "./useSelectedCell.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
}

export function MatrixOfPlace({ documents, place }: Props) {
  const engine = useEngine();
  const edit = usePlanner((state) => state.edit);
  const { change } = useJobAddress();
  const [lookedAt, lookAt] = useSelectedCell();
  const [isPaneOpen, setPaneOpen] = useState(hasRoomBeside);
  const [panel, setPanel] = useState<OpenPanel>(null);
  const search = useMixSearch(documents, place.id);
  const [mixId, setMixId] = useState<string | null>(null);
  const [inSight, setInSight] = useState({ first: 0, last: 11 });
  const [said, setSaid] = useState("");
  const gamut = useScreenGamut();
  const isNarrow = useNarrow();
  const isPrinting = usePrinting();
  const view = useRef<HTMLDivElement>(null);

  const { job, library } = documents;
  const { shelf } = library;
  const lines = useMemo(() => matrixLines(documents, place), [documents, place]);
  const candidates = useMemo(() => matrixCandidates(documents, place), [documents, place]);
  const { lessons } = useLessons();
  const { cells, failure } = usePredictedCells(engine, {
    lines,
    candidates,
    viewing: job.viewing,
    band: place.band,
    gamut,
    lessons,
    inSight,
  });
  const chosen = useMemo(
    () =>
      new Map(
        job.choices
          .filter(({ placeId }) => placeId === place.id)
          .map(({ lineId, candidateId }) => [lineId, candidateId]),
      ),
    [job.choices, place.id],
  );
  const line = lines.find((one) => one.line.id === lookedAt.lineId) ?? lines[0] ?? null;
  const column = candidates.find((one) => one.candidate.id === lookedAt.candidateId) ?? candidates[0] ?? null;
  const lineId = line?.line.id ?? null;
  const candidateId = column?.candidate.id ?? null;
  const selected = useMemo(() => ({ lineId, candidateId }), [lineId, candidateId]);
  const isPaneShown = isPaneOpen && line !== null && column !== null;
  const detail = useCellDetail(
    engine,
    isPaneShown ? { line, column, viewing: job.viewing, band: place.band, gamut, shelf } : null,
  );

  const select = useCallback(
    (nextLine: string, nextCandidate: string) => lookAt({ lineId: nextLine, candidateId: nextCandidate }),
    [lookAt],
  );
  const say = useSayChoice(lines, setSaid);
  const choose = useCallback(
    (forLine: string, candidate: string) => {
      const found = candidates.find((one) => one.candidate.id === candidate);
      if (found === undefined || found.mix === null || found.problems.length > 0) return;
      edit((now) => chooseCandidate(now, { lineId: forLine, placeId: place.id, candidateId: candidate }));
      say(forLine, mixName(found.mix, shelf));
    },
    [edit, place.id, candidates, shelf, say],
  );
  const unchoose = useCallback(
    (forLine: string) => {
      edit((now) => chooseCandidate(now, { lineId: forLine, placeId: place.id, candidateId: null }));
      say(forLine, null);
    },
    [edit, place.id, say],
  );
  const onInSight = useCallback((first: number, last: number) => {
    setInSight((before) => (before.first === first && before.last === last ? before : { first, last }));
  }, []);
  const focusNext = useFocusNext(view);
  const openPane = () => {
    focusNext(".detail h2");
    setPaneOpen(true);
  };
  const openDetails = (forLine: string, candidate: string) => {
    select(forLine, candidate);
    openPane();
  };
  const closePane = () => {
    focusNext(WHERE_WE_WERE);
    setPaneOpen(false);
  };
  const closeDialog = () => {
    // A removed column took its button, and the focus, with it; the dialog gives it back where it can.
    focusNext(WHERE_WE_WERE, true);
    setMixId(null);
  };

  const grid = {
    lines,
    candidates,
    cells,
    shelf,
    selected,
    chosen,
    onSelect: select,
    onChoose: choose,
    onUnchoose: unchoose,
    onChangeMix: setMixId,
  };
  if (isPrinting) return <MatrixPaper {...grid} documents={documents} place={place} />;
  return (
    <div className="view-with-pane matrix-view" data-pane={isPaneShown ? "open" : "closed"} ref={view}>
      <div className="view matrix">
        <h2 className="unseen">Matrix</h2>
        <MatrixToolbar
          job={job}
          place={place}
          units={shelf.defaults.units}
          open={panel}
          onOpen={setPanel}
          onPlace={(placeId) => change({ place: placeId, mix: null })}
          onAddMix={() => setMixId(NEW_MIX)}
          onDetails={isPaneShown || isNarrow || column === null ? null : openPane}
        />
        {panel === "place" && (
          <PlacePanel
            documents={documents}
            place={place}
            onPlace={(placeId) => change({ place: placeId, mix: null })}
            onClose={() => setPanel(null)}
          />
        )}
        {panel === "target" && <TargetPanel place={place} onClose={() => setPanel(null)} />}
        {panel === "light" && (
          <LightPanel
            job={job}
            indicativeCount={indicativeCount(lines, job.viewing.illuminant)}
            onClose={() => setPanel(null)}
          />
        )}
        {panel === "mixes" && (
          <FindMixes
            documents={documents}
            place={place}
            search={search}
            onTarget={() => setPanel("target")}
            onClose={() => setPanel(null)}
          />
        )}
        <p className="unseen" role="status">
          {said}
        </p>
        {failure !== null && (
          <Notice kind="problem" announce>
            <p>The prediction failed: {failure}. Reload the page; nothing that was entered is lost.</p>
          </Notice>
        )}
        {candidates.length === 0 ? (
          <EmptyPlace
            documents={documents}
            place={place}
            onWriteMix={() => setMixId(NEW_MIX)}
            onFindMixes={() => setPanel("mixes")}
          />
        ) : lines.length === 0 ? (
          <section className="matrix__next panel" aria-label="What to do next">
            <p>No garment is printed at this place.</p>
            <p>
              <ActionButton onClick={() => setPanel("place")}>Say which garments are</ActionButton>
            </p>
          </section>
        ) : isNarrow ? (
          <OneGarment {...grid} onDetails={openDetails} />
        ) : (
          <MatrixGrid
            {...grid}
            label={`Garments and mixes, ${place.name}`}
            isPaneShown={isPaneShown}
            onInSight={onInSight}
          />
        )}
      </div>
      {isPaneShown && (
        <DetailPane
          documents={documents}
          line={line}
          column={column}
          place={place}
          shown={detail.shown}
          hasFailed={detail.hasFailed}
          isChosen={chosen.get(line.line.id) === column.candidate.id}
          onChoose={() => choose(line.line.id, column.candidate.id)}
          onUnchoose={() => unchoose(line.line.id)}
          onClose={closePane}
        />
      )}
      {mixId !== null && (
        <MixDialogs
          documents={documents}
          place={place}
          openId={mixId}
          onClose={closeDialog}
          onAdded={(added) => lineId !== null && select(lineId, added)}
        />
      )}
    </div>
  );
}

/** The cell looked at, or on a narrow screen its button. */
const WHERE_WE_WERE = "[role='gridcell'][tabindex='0'], [data-details]";

/** Moves the focus after the next drawing, when what it is meant for is there; `onlyLost`: where nothing else has it. */
function useFocusNext(view: RefObject<HTMLDivElement | null>) {
  const wanted = useRef<{ readonly selector: string; readonly onlyLost: boolean } | null>(null);
  useEffect(() => {
    if (wanted.current === null) return;
    const { selector, onlyLost } = wanted.current;
    wanted.current = null;
    if (onlyLost && document.activeElement !== document.body) return;
    view.current?.querySelector<HTMLElement>(selector)?.focus({ preventScroll: true });
  });
  return (selector: string, onlyLost = false) => {
    wanted.current = { selector, onlyLost };
  };
}

/** Garments known by a reading under another light only. */
function indicativeCount(lines: readonly MatrixLine[], illuminant: string): number {
  return lines.filter(
    ({ garment }) =>
      garment !== null && garment.readUnder !== null && garment.readUnder.illuminant !== illuminant,
  ).length;
}

/** Says a choice to a screen reader, which does not see the word appear. */
function useSayChoice(lines: readonly MatrixLine[], say: (words: string) => void) {
  const names = useRef(new Map<string, string>());
  useEffect(() => {
    names.current = new Map(lines.map(({ line, lot }) => [line.id, garmentTitle(lot)]));
  }, [lines]);
  return useCallback(
    (lineId: string, mix: string | null) => {
      const name = names.current.get(lineId) ?? "";
      say(mix === null ? `Nothing is chosen for ${name}.` : `${mix} is chosen for ${name}.`);
    },
    [say],
  );
}
