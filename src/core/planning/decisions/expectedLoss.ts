/**
 * What a garment line is expected to cost in refused pieces with one mix, in the shop's money, with the inputs it came from,
 * so that the screen can show and open each of them.
 */

export interface LossInputs {
  readonly pieceCount: number;
  /** Price of one bare piece, money. */
  readonly piecePrice: number;
  readonly suppliedBy: "shop" | "customer";
  /** Part of the piece's price that the shop owes for a spoiled piece of the customer's, 0..1. */
  readonly liableShare: number;
  /** What is spent on printing one piece, money: ink, press and handling, or the price asked for the print. */
  readonly printCost: number;
  /** Chance that the print lands in the target band, 0..1. */
  readonly chanceInBand: number;
  /** Part of the pieces that the customer would refuse where the print misses the band, 0..1. */
  readonly refusedShare: number;
}

export interface ExpectedLoss {
  readonly chanceOutOfBand: number;
  /** Money. */
  readonly costPerSpoiledPiece: number;
  /** Money lost where the print misses the band. */
  readonly lossIfOutOfBand: number;
  /** Money: `lossIfOutOfBand` times its chance. */
  readonly expectedLoss: number;
  readonly inputs: LossInputs;
}

/**
 * A refused lot of the customer's own pieces is replaced in full: it goes beyond every posted spoilage allowance (1 to 5 %,
 * design notes, trade.md §1). Invented default; the shop's contract decides.
 */
export const DEFAULT_LIABLE_SHARE = 1;
/** Part of a missed line that is refused (the demo shop's figure, model.md §7 gives none). Invented default. */
export const DEFAULT_REFUSED_SHARE = 0.7;

function requireMoney(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
}

function requireShare(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be in 0..1; got ${value}`);
}

/**
 * What one spoiled piece costs, money: the print is lost always, the piece in full where the shop supplied it and in the
 * part the shop is liable for where the customer did.
 * @throws RangeError for negative money or a share outside 0..1.
 */
export function costOfSpoiledPiece(
  inputs: Pick<LossInputs, "piecePrice" | "suppliedBy" | "liableShare" | "printCost">,
): number {
  const { piecePrice, suppliedBy, liableShare, printCost } = inputs;
  requireMoney("piecePrice", piecePrice);
  requireMoney("printCost", printCost);
  requireShare("liableShare", liableShare);
  return printCost + piecePrice * (suppliedBy === "shop" ? 1 : liableShare);
}

/**
 * Expected loss of a line (model.md §7): quantity x what one spoiled piece costs x chance out of band x share that would
 * be refused. Linear in each; a whole line misses together, for what nobody knows of a lot is the same for all its pieces.
 * @throws RangeError for a negative count or money, or a chance or share outside 0..1.
 */
export function expectedLossOf(inputs: LossInputs): ExpectedLoss {
  const { pieceCount, chanceInBand, refusedShare } = inputs;
  requireMoney("pieceCount", pieceCount);
  requireShare("chanceInBand", chanceInBand);
  requireShare("refusedShare", refusedShare);
  const costPerSpoiledPiece = costOfSpoiledPiece(inputs);
  const lossIfOutOfBand = pieceCount * refusedShare * costPerSpoiledPiece;
  const chanceOutOfBand = 1 - chanceInBand;
  return {
    chanceOutOfBand,
    costPerSpoiledPiece,
    lossIfOutOfBand,
    expectedLoss: lossIfOutOfBand * chanceOutOfBand,
    inputs,
  };
}
