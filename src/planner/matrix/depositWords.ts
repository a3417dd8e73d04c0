/** The deposit of a set-up in words: how thick, and whether anyone weighed it. */
import type { Application } from "../../core/prediction/inputs.ts";
import type { SetUp, ShopDefaults } from "../../job/shelfDocument.ts";
import { weighedDeposit } from "../../job/weighedDeposit.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { format } from "../../units/unit.ts";

/** Thickness is micrometres everywhere; what was weighed stands in the shop's own unit. */
export function depositWords(
  { depositUm }: Application,
  { weighed }: SetUp,
  units: ShopDefaults["units"],
): string {
  const thick = `deposit ${depositUm.toFixed(1)} µm`;
  if (weighed === null) return `${thick}, estimated from the mesh`;
  const { meanGsm, pieceCount } = weighedDeposit(weighed);
  return `${thick}, weighed: ${format(meanGsm, shopUnits(units).massPerArea)} over ${pieceCount} ${pieceCount === 1 ? "piece" : "pieces"}`;
}
