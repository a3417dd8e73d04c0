/** Whether the page is being printed: a view puts its paper in the place of its screen. */
import { useEffect, useState } from "react";
import { flushSync } from "react-dom";

/** True from the moment the browser prepares a print: what is printed has to be there before it looks. */
export function usePrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    const begin = () => flushSync(() => setPrinting(true));
    const end = () => setPrinting(false);
    window.addEventListener("beforeprint", begin);
    window.addEventListener("afterprint", end);
    return () => {
      window.removeEventListener("beforeprint", begin);
      window.removeEventListener("afterprint", end);
    };
  }, []);
  return isPrinting;
}
