/**
 * What was typed for a garment and cannot be stored yet: a blend that does not sum to 100 %, a half-typed reading, a
 * new garment. Kept above the views, so that another row or another view does not lose it.
 */
import { createContext, type ReactNode, useContext, useEffect, useMemo, useReducer } from "react";
import type { GeometryDocument, LabDocument, ViewingDocument } from "../../job/colourDocument.ts";
import type { BlendPart, GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";

export interface DraftBlendPart extends Omit<BlendPart, "massFraction"> {
  readonly massFraction: number | null;
}

export type DraftReading = { readonly [Axis in keyof LabDocument]: number | null };

export type BareDraft =
  | {
      readonly kind: "readings";
      readonly viewing: ViewingDocument;
      readonly geometry: GeometryDocument;
      readonly readings: readonly DraftReading[];
    }
  | {
      readonly kind: "spectrum";
      readonly geometry: GeometryDocument;
      readonly text: string;
      readonly firstNm: number | null;
      readonly lastNm: number | null;
    }
  | { readonly kind: "hex" };

/** A garment on its way into the job. `blend` and `bare` are null until they are complete. */
export interface NewGarment {
  readonly lot: Omit<GarmentLot, "id" | "blend" | "bare"> & {
    readonly blend: BlendPart[] | null;
    readonly bare: GarmentLot["bare"] | null;
  };
  readonly line: Omit<Line, "id" | "garmentLotId">;
}

/** The key of the new garment's drafts, where others have their lot's id. */
export const NEW_LOT = "new";

interface Drafts {
  readonly blends: Readonly<Record<string, readonly DraftBlendPart[]>>;
  readonly bares: Readonly<Record<string, BareDraft>>;
  readonly newGarment: NewGarment | null;
}

interface DraftActions {
  setBlend(lotId: string, blend: readonly DraftBlendPart[] | null): void;
  setBare(lotId: string, bare: BareDraft | null): void;
  setNewGarment(garment: NewGarment | null): void;
}

const NONE: Drafts = { blends: {}, bares: {}, newGarment: null };
const Context = createContext<(Drafts & DraftActions) | null>(null);

function withEntry<Value>(record: Readonly<Record<string, Value>>, key: string, value: Value | null) {
  const { [key]: _old, ...rest } = record;
  return value === null ? rest : { ...rest, [key]: value };
}

export function DraftsProvider({ children }: { readonly children: ReactNode }) {
  const [drafts, change] = useReducer((state: Drafts, step: (state: Drafts) => Drafts) => step(state), NONE);
  const actions = useMemo<DraftActions>(
    () => ({
      setBlend: (lotId, blend) =>
        change((state) => ({ ...state, blends: withEntry(state.blends, lotId, blend) })),
      setBare: (lotId, bare) => change((state) => ({ ...state, bares: withEntry(state.bares, lotId, bare) })),
      setNewGarment: (newGarment) =>
        change((state) => ({
          newGarment,
          blends: newGarment === null ? withEntry(state.blends, NEW_LOT, null) : state.blends,
          bares: newGarment === null ? withEntry(state.bares, NEW_LOT, null) : state.bares,
        })),
    }),
    [],
  );
  const any =
    drafts.newGarment !== null || [drafts.blends, drafts.bares].some((kept) => Object.keys(kept).length > 0);
  useEffect(() => {
    if (!any) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [any]);
  const value = useMemo(() => ({ ...drafts, ...actions }), [drafts, actions]);
  return <Context value={value}>{children}</Context>;
}

export function useDrafts(): Drafts & DraftActions {
  const drafts = useContext(Context);
  if (drafts === null) throw new Error("the drafts are not provided here");
  return drafts;
}

/** What of a lot is typed but not saved, in words; empty when nothing. */
export function unsavedParts({ blends, bares }: Drafts, lotId: string): string[] {
  const parts: string[] = [];
  if (blends[lotId] !== undefined) parts.push("fibre blend");
  if (bares[lotId] !== undefined) parts.push("bare colour");
  return parts;
}
