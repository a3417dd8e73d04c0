/** The line on top: which job, how many pieces, whether it is saved; undo, redo and the theme. */
import type { Documents } from "../job/documents.ts";
import { pieceCount } from "../job/lookup.ts";
import { ActionButton } from "./controls/ActionButton.tsx";
import { Choice } from "./controls/Choice.tsx";
import { type Theme, useTheme } from "./look/theme.ts";
import { useServices } from "./services.tsx";
import { usePlanner } from "./state/usePlanner.ts";
import { pieces } from "./words/pieceWords.ts";

const SAVE_WORDS = {
  saved: "saved",
  saving: "saving…",
  unsaved: "unsaved",
  failed: "not saved",
} as const;

const THEMES: readonly { value: Theme; label: string }[] = [
  { value: "system", label: "System theme" },
  { value: "light", label: "Light theme" },
  { value: "dark", label: "Dark theme" },
];

export function JobLine({ documents }: { readonly documents: Documents | null }) {
  const saveState = usePlanner((state) => state.saveState);
  const canUndo = usePlanner((state) => state.canUndo);
  const canRedo = usePlanner((state) => state.canRedo);
  const undo = usePlanner((state) => state.undo);
  const redo = usePlanner((state) => state.redo);
  const [theme, changeTheme] = useTheme(useServices().theme);
  return (
    <header className="shell__job panel">
      <div className="shell__title">
        <h1>{documents === null ? "Tonebench" : documents.job.number}</h1>
        {documents !== null && (
          <p>
            {documents.job.customer !== "" && <>{documents.job.customer} · </>}
            {pieces(documents.job.lines.reduce((sum, line) => sum + pieceCount(line), 0))}
          </p>
        )}
      </div>
      <div className="shell__actions">
        {documents !== null && (
          <>
            <span className="shell__saved" role="status" aria-label="Saving" data-state={saveState}>
              {SAVE_WORDS[saveState]}
            </span>
            <ActionButton weight="plain" disabled={!canUndo} onClick={undo} aria-keyshortcuts="Control+Z">
              Undo
            </ActionButton>
            <ActionButton
              weight="plain"
              disabled={!canRedo}
              onClick={redo}
              aria-keyshortcuts="Control+Shift+Z"
            >
              Redo
            </ActionButton>
          </>
        )}
        <Choice label="Theme" labelUnseen value={theme} options={THEMES} onChange={changeTheme} />
      </div>
    </header>
  );
}
