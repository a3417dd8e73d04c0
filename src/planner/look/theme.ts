/** Which theme is in use: the system's, or the one that was chosen here. */
import { useCallback, useState } from "react";

export type Theme = "system" | "light" | "dark";

/** Where the choice is kept; main.tsx hands in the browser's. */
export interface ThemePort {
  read(): Theme;
  keep(theme: Theme): void;
}

/** Sets the theme on the page; without a mark the style sheet follows the system. */
export function applyTheme(theme: Theme, root: HTMLElement = document.documentElement): void {
  if (theme === "system") delete root.dataset.theme;
  else root.dataset.theme = theme;
}

export function useTheme(port: ThemePort): readonly [Theme, (theme: Theme) => void] {
  const [theme, setTheme] = useState(() => port.read());
  const change = useCallback(
    (next: Theme) => {
      setTheme(next);
      applyTheme(next);
      port.keep(next);
    },
    [port],
  );
  return [theme, change];
}
