/**
 * Keeps the chosen theme. In local storage and not in the database, because it has to be known before the first
 * picture: a database answers too late and the page would flash.
 */

export type StoredTheme = "system" | "light" | "dark";

const KEY = "tonebench.theme";

export interface ThemeSetting {
  read(): StoredTheme;
  keep(theme: StoredTheme): void;
}

/** @param open gives the store; it may throw, as where a browser blocks site data: the theme then lasts until a reload. */
export function themeSetting(open: () => Storage): ThemeSetting {
  return {
    read() {
      try {
        const stored = open().getItem(KEY);
        return stored === "light" || stored === "dark" ? stored : "system";
      } catch {
        return "system";
      }
    },
    keep(theme) {
      try {
        if (theme === "system") open().removeItem(KEY);
        else open().setItem(KEY, theme);
      } catch {
        // The theme is a comfort; where nothing can be kept, it holds for this visit.
      }
    },
  };
}
