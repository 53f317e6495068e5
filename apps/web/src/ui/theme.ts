export type Theme = 'light' | 'dark';

const KEPT = 'loadtrain.theme';

/** The theme that the person chose here, else the system's. */
export function themeNow(): Theme {
  const kept = localStorage.getItem(KEPT);
  if (kept === 'light' || kept === 'dark') return kept;
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** Shows a theme; `keep` remembers it on this device. */
export function showTheme(theme: Theme, keep = false): void {
  document.documentElement.dataset['theme'] = theme;
  if (keep) localStorage.setItem(KEPT, theme);
}
