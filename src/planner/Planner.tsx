/** The whole planner: the job's line, the row of views, and the view that the address names. */
import { Suspense, useEffect, useRef, useSyncExternalStore } from "react";
import { JOBS_ADDRESS, type JobAddress, jobAddress, printAddress, useAddress } from "./address.ts";
import { ActionButton } from "./controls/ActionButton.tsx";
import { Notice } from "./controls/Notice.tsx";
import { DraftsProvider } from "./garments/drafts.tsx";
import { JobLine } from "./JobLine.tsx";
import { JobsView } from "./jobs/JobsView.tsx";
import { useOpenJob } from "./jobs/useOpenJob.ts";
import { LessonsProvider } from "./lessons.tsx";
import { type PlannerServices, ServicesProvider, useServices } from "./services.tsx";
import type { PlannerStore } from "./state/plannerStore.ts";
import { PlannerProvider, useMaybeDocuments, usePlanner } from "./state/usePlanner.ts";
import { useUndoKeys } from "./useUndoKeys.ts";
import { ViewFailure } from "./ViewFailure.tsx";
import { VIEWS } from "./views.tsx";
import { ProblemList } from "./words/ProblemList.tsx";

interface Props {
  readonly store: PlannerStore;
  readonly services: PlannerServices;
}

export function Planner({ store, services }: Props) {
  return (
    <PlannerProvider store={store}>
      <ServicesProvider services={services}>
        <LessonsProvider>
          <DraftsProvider>
            <Shell />
          </DraftsProvider>
        </LessonsProvider>
      </ServicesProvider>
    </PlannerProvider>
  );
}

function Shell() {
  const main = useRef<HTMLElement>(null);
  const { address } = useAddress();
  const documents = useMaybeDocuments();
  const opening = useOpenJob(address, documents);
  useUndoKeys(
    usePlanner((state) => state.undo),
    usePlanner((state) => state.redo),
  );
  const view =
    address === null || address.view === "jobs"
      ? undefined
      : (VIEWS.find(({ name }) => name === address.view) ?? VIEWS[0]);
  const number = documents?.job.number;
  useEffect(() => {
    const place = address?.view === "jobs" ? "Jobs" : view?.title;
    document.title = [place, number, "Tonebench"].filter((part) => part !== undefined).join(" · ");
  }, [address?.view, view, number]);

  // Where the row of links is wider than the window, the one that stands open is in sight.
  const links = useRef<HTMLElement>(null);
  const openView = address?.view ?? null;
  useEffect(() => {
    if (openView === null) return;
    const link = links.current?.querySelector("[aria-current]");
    link?.scrollIntoView?.({ block: "nearest", inline: "nearest" });
  }, [openView]);

  return (
    <div className="shell">
      <button type="button" className="action panel shell__skip" onClick={() => main.current?.focus()}>
        Skip to the view
      </button>
      <JobLine documents={documents} />
      <nav className="shell__views panel" aria-label="Views" ref={links}>
        <ul>
          {documents !== null &&
            VIEWS.map(({ name, title }) => (
              <li key={name}>
                <a
                  href={printAddress(linkTo(name, documents.job.id, address as JobAddress | null))}
                  aria-current={view?.name === name ? "page" : undefined}
                >
                  {title}
                </a>
              </li>
            ))}
          <li>
            <a href={printAddress(JOBS_ADDRESS)} aria-current={address?.view === "jobs" ? "page" : undefined}>
              Jobs
            </a>
          </li>
        </ul>
      </nav>
      <main ref={main} className="shell__view surround" tabIndex={-1}>
        <SaveNotice />
        {opening.problems.length > 0 && (
          <div className="view">
            <Notice kind="problem" announce>
              <p>This job could not be opened. Nothing was changed.</p>
              <ProblemList problems={opening.problems} />
            </Notice>
          </div>
        )}
        {address?.view === "jobs" && <JobsView />}
        {view !== undefined && documents !== null && opening.isOpen && (
          <ViewFailure key={view.name}>
            <Suspense fallback={<p className="view">Opening…</p>}>
              <view.Component />
            </Suspense>
          </ViewFailure>
        )}
        {address?.view !== "jobs" && !opening.isOpen && opening.problems.length === 0 && (
          <p className="view" role="status">
            Opening the job…
          </p>
        )}
      </main>
    </div>
  );
}

/** Changing the view keeps the line that is being looked at. */
function linkTo(name: JobAddress["view"], jobId: string, from: JobAddress | null): JobAddress {
  const same = from !== null && from.jobId === jobId;
  return jobAddress(jobId, name, same ? { line: from.line, mix: from.mix, place: from.place } : {});
}

function SaveNotice() {
  const { saveTrouble } = useServices();
  const trouble = useSyncExternalStore(saveTrouble.subscribe, saveTrouble.read);
  if (trouble === null) return null;
  return (
    <div className="shell__notice">
      <Notice kind="problem" announce>
        <p>The last changes are not saved.</p>
        <ProblemList problems={[trouble]} />
        {trouble.code === "changed-elsewhere" && (
          <ActionButton onClick={() => window.location.reload()}>Reload what was saved there</ActionButton>
        )}
      </Notice>
    </div>
  );
}
