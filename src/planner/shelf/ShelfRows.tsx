/** One list of the shelf: a line for each item that opens in place, and ways to add, duplicate and remove. */
import { type ReactNode, useEffect, useId, useRef, useState } from "react";
import type { Problem } from "../../job/problem.ts";
import type { ShelfList } from "../../job/shelfItemUse.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { ProblemList } from "../words/ProblemList.tsx";
import { LIST_NOUNS } from "../words/shelfWords.ts";

export interface ShelfRow {
  readonly id: string;
  readonly name: string;
  readonly summary: ReactNode;
  readonly editor: ReactNode;
  /** Why it cannot be removed although nothing uses it. */
  readonly keptBecause?: string | null;
}

interface Props {
  readonly list: ShelfList;
  readonly rows: readonly ShelfRow[];
  /** What has to be known before an item can be added; calls back with the new item's id. */
  readonly newItem: (onAdded: (id: string) => void) => ReactNode;
  /** Why none can be added now. */
  readonly cannotAdd?: string | null;
  /** Adds a copy and gives its id. */
  readonly onDuplicate: (id: string) => string;
  readonly onRemove: (id: string) => readonly Problem[];
}

/** More users than this would not be read. Invented default. */
const SHOWN_USERS = 5;

export function ShelfRows({ list, rows, newItem, cannotAdd = null, onDuplicate, onRemove }: Props) {
  const id = useId();
  const element = useRef<HTMLDivElement>(null);
  const focusNext = useRef<string | null>(null);
  const [openId, setOpenId] = useState<string | null>(null);
  const [isAdding, setIsAdding] = useState(false);
  const [said, setSaid] = useState("");
  const [refusal, setRefusal] = useState<{ readonly id: string; readonly words: ReactNode } | null>(null);
  const noun = LIST_NOUNS[list];

  // After adding, duplicating or removing, the keyboard goes on where the work is.
  useEffect(() => {
    if (focusNext.current === null) return;
    element.current?.querySelector<HTMLElement>(focusNext.current)?.focus();
    focusNext.current = null;
  });

  function open(rowId: string | null, words = ""): void {
    setOpenId(rowId);
    setRefusal(null);
    setSaid(words);
  }

  function remove({ id: rowId, name, keptBecause }: ShelfRow): void {
    if (keptBecause != null) {
      setRefusal({ id: rowId, words: <p>{keptBecause}</p> });
      return;
    }
    const users = onRemove(rowId);
    if (users.length > 0) {
      const more = users.length - SHOWN_USERS;
      setRefusal({
        id: rowId,
        words: (
          <>
            <p>{name} stays: it is in use.</p>
            <ProblemList problems={users.slice(0, SHOWN_USERS)} />
            {more > 0 && <p>And {more} more.</p>}
          </>
        ),
      });
      return;
    }
    const index = rows.findIndex((row) => row.id === rowId);
    const next = rows[index + 1] ?? rows[index - 1];
    focusNext.current = next === undefined ? "[data-add]" : `[data-item="${next.id}"]`;
    open(null, `${name} was removed. Undo brings it back.`);
  }

  return (
    <div ref={element}>
      <p className="shelf__said" role="status">
        {said}
      </p>
      <div className="shelf__add">
        {isAdding && cannotAdd === null ? (
          <fieldset className="shelf__new" aria-label={`New ${noun}`}>
            {newItem((added) => {
              setIsAdding(false);
              focusNext.current = `[data-editor="${added}"] :is(input, select)`;
              open(added, `The ${noun} was added.`);
            })}
            <ActionButton
              weight="plain"
              onClick={() => {
                setIsAdding(false);
                focusNext.current = "[data-add]";
              }}
            >
              Do not add it
            </ActionButton>
          </fieldset>
        ) : (
          <>
            <ActionButton
              data-add=""
              disabled={cannotAdd !== null}
              onClick={() => {
                setIsAdding(true);
                setSaid("");
                focusNext.current = ".shelf__new :is(input, select)";
              }}
            >
              Add a {noun}
            </ActionButton>
            {cannotAdd !== null && <p>{cannotAdd}</p>}
          </>
        )}
      </div>
      {rows.length === 0 && <p>Nothing is on the shelf here yet.</p>}
      <ul>
        {rows.map((row) => {
          const isOpen = row.id === openId;
          const editorId = `${id}-${row.id}`;
          return (
            <li className="shelf__row" key={row.id} data-open={isOpen ? "" : undefined}>
              <div className="shelf__line">
                <button
                  type="button"
                  className="shelf__open"
                  data-item={row.id}
                  aria-expanded={isOpen}
                  aria-controls={isOpen ? editorId : undefined}
                  onClick={() => open(isOpen ? null : row.id)}
                >
                  {row.name}
                </button>
                <div className="shelf__summary">{row.summary}</div>
              </div>
              {isOpen && (
                <fieldset className="shelf__editor" id={editorId} data-editor={row.id} aria-label={row.name}>
                  {row.editor}
                  {refusal?.id === row.id && (
                    <Notice kind="problem" announce>
                      {refusal.words}
                    </Notice>
                  )}
                  <div className="acts">
                    <ActionButton
                      aria-label={`Duplicate ${row.name}`}
                      onClick={() => {
                        const copy = onDuplicate(row.id);
                        focusNext.current = `[data-editor="${copy}"] :is(input, select)`;
                        open(copy, `${row.name} was duplicated. This is the copy.`);
                      }}
                    >
                      Duplicate
                    </ActionButton>
                    <ActionButton aria-label={`Remove ${row.name}`} onClick={() => remove(row)}>
                      Remove
                    </ActionButton>
                  </div>
                </fieldset>
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
