/** How money reads: to the cent where it is small, whole and grouped where a cent says nothing. */
const SMALL = new Intl.NumberFormat("en-GB", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const LARGE = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 0 });

/** Below this amount cents are shown. */
const CENTS_BELOW = 100;

/** "1,186 EUR", "12.50 EUR"; the bare number where the shop has entered no currency. */
export function moneyWords(amount: number, currency: string): string {
  const isSmall = Math.abs(amount) < CENTS_BELOW && Math.abs(amount - Math.round(amount)) > 0.004;
  const figure = (isSmall ? SMALL : LARGE).format(Math.abs(amount) < 0.005 ? 0 : amount);
  // A no-break space: an amount never parts from its currency.
  return currency === "" ? figure : `${figure}\u00a0${currency}`;
}
