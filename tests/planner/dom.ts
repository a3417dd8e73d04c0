// Set-up of every planner test: matchers that speak of what a person sees, a clean page, and no canvas, as in jsdom.
import "@testing-library/jest-dom/vitest";
import { cleanup } from "@testing-library/react";
import { afterEach } from "vitest";

afterEach(cleanup);

HTMLCanvasElement.prototype.getContext = () => null;
