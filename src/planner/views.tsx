/** The views of a job in the order of the work; each is loaded when it is first opened. */
import { type ComponentType, type LazyExoticComponent, lazy } from "react";
import type { ViewName } from "./address.ts";

interface View {
  readonly name: ViewName;
  readonly title: string;
  readonly Component: LazyExoticComponent<ComponentType>;
}

const FILES: readonly { readonly name: ViewName; readonly title: string; readonly file: string }[] = [
  { name: "garments", title: "Garments", file: "./garments/GarmentsView.tsx" },
  { name: "matrix", title: "Matrix", file: "./matrix/MatrixView.tsx" },
  { name: "before-the-run", title: "Before the run", file: "./beforeTheRun/BeforeTheRunView.tsx" },
  { name: "shelf", title: "Shelf", file: "./shelf/ShelfView.tsx" },
];

/** Only views that exist are linked; a view is a file with a default export at the place named above. */
const loaders = import.meta.glob<{ default: ComponentType }>(["./*/*View.tsx", "!./jobs/*"]);

export const VIEWS: readonly View[] = FILES.flatMap(({ name, title, file }) => {
  const load = loaders[file];
  return load === undefined ? [] : [{ name, title, Component: lazy(load) }];
});
