/** A colour-measurement file while it is being asked about: the worker reads it anew after every answer. */
import { useEffect, useState } from "react";
import type { ReadingsAnswer, ReadingsRequest } from "../../engine/readingsFile.ts";
import type { ColumnMatching } from "../../job/shopDefaultsDocument.ts";
import { useEngine } from "../services.tsx";

export type FileWish = Omit<ReadingsRequest, "remembered">;

export interface ReadingsFile {
  readonly wish: FileWish | null;
  /** The last answer, until the next is there. */
  readonly answer: ReadingsAnswer | null;
  readonly failed: boolean;
  readonly open: (file: File) => Promise<void>;
  readonly change: (part: Partial<FileWish>) => void;
  readonly close: () => void;
}

const NOTHING_SAID = { light: null, observer: null, geometry: null } as const;

export function useReadingsFile(remembered: readonly ColumnMatching[], pieceCount: number): ReadingsFile {
  const engine = useEngine();
  const [wish, setWish] = useState<FileWish | null>(null);
  const [answer, setAnswer] = useState<ReadingsAnswer | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (wish === null) return;
    let isWanted = true;
    engine.book.readings({ ...wish, pieceCount, remembered }).then(
      (found) => {
        if (isWanted) setAnswer(found);
      },
      () => {
        if (isWanted) setFailed(true);
      },
    );
    return () => {
      isWanted = false;
    };
  }, [engine, wish, pieceCount, remembered]);
  const begin = (next: FileWish | null) => {
    setAnswer(null);
    setFailed(false);
    setWish(next);
  };
  return {
    wish,
    answer,
    failed,
    open: async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      begin({
        name: file.name,
        bytes,
        matching: null,
        scale: null,
        answers: NOTHING_SAID,
        pairs: null,
        pieceCount,
      });
    },
    change: (part) => setWish((before) => (before === null ? null : { ...before, ...part })),
    close: () => begin(null),
  };
}
