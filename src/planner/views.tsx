/** The views of a job in the order of the work; each is loaded when it is first opened. Only views that exist are here. */
import { type ComponentType, type LazyExoticComponent, lazy } from "react";
import type { ViewName } from "./address.ts";

interface View {
  readonly name: ViewName;
  readonly title: string;
  readonly Component: LazyExoticComponent<ComponentType>;
}

export const VIEWS: readonly View[] = [
  { name: "garments", title: "Garments", Component: lazy(() => import("./garments/GarmentsView.tsx")) },
  { name: "matrix", title: "Matrix", Component: lazy(() => import("./matrix/MatrixView.tsx")) },
  { name: "tests", title: "Tests", Component: lazy(() => import("./tests/TestsView.tsx")) },
  {
    name: "before-the-run",
    title: "Before the run",
    Component: lazy(() => import("./beforeTheRun/BeforeTheRunView.tsx")),
  },
  { name: "ink", title: "Ink", Component: lazy(() => import("./ink/InkView.tsx")) },
  { name: "press", title: "Press", Component: lazy(() => import("./press/PressView.tsx")) },
  { name: "shelf", title: "Shelf", Component: lazy(() => import("./shelf/ShelfView.tsx")) },
];
