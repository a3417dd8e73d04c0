/** The worker is asked for beside the page; a browser without one, or that refuses it, goes on without. */
import { expect, it } from "vitest";
import { keepForOffline } from "../../src/storage/offline.ts";

it("registers the worker that the build wrote beside the page", async () => {
  const asked: unknown[] = [];
  const register = async (address: string | URL) => {
    asked.push(address);
    return {} as ServiceWorkerRegistration;
  };
  expect(await keepForOffline({ register })).toBe(true);
  expect(asked).toEqual(["./offline.js"]);
});

it("goes without where there is none or it is refused", async () => {
  expect(await keepForOffline(undefined)).toBe(false);
  const register = () => Promise.reject(new DOMException("refused", "SecurityError"));
  expect(await keepForOffline({ register })).toBe(false);
});
