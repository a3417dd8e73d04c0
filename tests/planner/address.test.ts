/** An address survives being printed and read again, and nonsense leads nowhere. */
import { describe, expect, it } from "vitest";
import {
  type Address,
  JOBS_ADDRESS,
  jobAddress,
  parseAddress,
  printAddress,
  VIEW_NAMES,
} from "../../src/planner/address.ts";

describe("the address", () => {
  const addresses: Address[] = [
    JOBS_ADDRESS,
    ...VIEW_NAMES.map((view) => jobAddress("some-id", view)),
    jobAddress("some-id", "matrix", { line: "a b&c", mix: "d/e?", place: "f#g" }),
    jobAddress("some-id", "shelf", { tab: "set-ups" }),
  ];

  it.each(addresses.map((address) => [printAddress(address), address] as const))(
    "reads %s back",
    (hash, address) => {
      expect(parseAddress(hash)).toEqual(address);
    },
  );

  it.each(["", "#", "#/", "#/job", "#/job/", "#/nothing", "#jobsandmore"])(
    "takes %j for no address",
    (hash) => {
      expect(parseAddress(hash)).toBeNull();
    },
  );

  it("opens the garments where the view is unknown", () => {
    expect(parseAddress("#/job/some-id/elsewhere")).toEqual(jobAddress("some-id", "garments"));
  });
});
