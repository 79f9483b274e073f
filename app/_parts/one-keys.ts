/** Whether this browser wants commands on single keys. Kept in the browser: it is about a person's hands, not the shop. */
export const oneKeysAreOn = (): boolean => kept() !== 'off';

export function turnOneKeys(on: boolean): void {
  try {
    if (on) localStorage.removeItem(KEPT);
    else localStorage.setItem(KEPT, 'off');
  } catch {
    // A browser that keeps nothing keeps the keys on, until the page says otherwise again.
  }
}

function kept(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null;
  }
}

const KEPT = 'one-keys';
