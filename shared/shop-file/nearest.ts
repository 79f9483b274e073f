/**
 * The known word that a typed one was probably meant to be.
 *
 * Gives  null when none is close: more than a third of the letters would have to change, or there are too many to ask
 */
export function nearest(typed: string, known: readonly string[]): string | null {
  if (typed.length > LONGEST || known.length > MOST) return null;
  const wanted = typed.toLowerCase();
  let best: string | null = null;
  let least = Math.max(1, typed.length / 3);
  for (const word of known) {
    if (word.length > LONGEST || Math.abs(word.length - typed.length) > least) continue;
    const changes = changesBetween(wanted, word.toLowerCase());
    if (changes < least || (changes === least && best === null)) [best, least] = [word, changes];
  }
  return best;
}

// A suggestion is a kindness; searching a huge list for one, for each of many faults, would not be.
const LONGEST = 64;
const MOST = 300;

/** How many letters must be added, left out or changed to make one word the other. */
function changesBetween(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const change = (above[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(change, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    above = current;
  }
  return above[b.length] ?? 0;
}
