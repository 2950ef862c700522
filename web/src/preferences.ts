/** Choices of look that this browser remembers; where storage is blocked they last as long as the page. */

const prefix = "rowlight.";

export function remembered(key: string): string | null {
  try {
    return localStorage.getItem(prefix + key);
  } catch {
    return null;
  }
}

export function remember(key: string, value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, value);
  } catch {
    // Storage is blocked: nothing is lost but the memory of a choice.
  }
}
