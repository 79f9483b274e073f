/** What the names under which mixes are kept on a device begin with. The number is that of their form. */
export const MIX_KEY = 'mix 1 ';

/** The names under which mixes are kept on this device. None where the browser keeps nothing. */
export function keptKeys(): string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(MIX_KEY));
  } catch {
    return [];
  }
}
