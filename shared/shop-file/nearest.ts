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
    const changes = changesBetween(wanted, word.toLowerCase(), least);
    if (changes < least || (changes === least && best === null)) [best, least] = [word, changes];
  }
  return best;
}

// A suggestion is a kindness; searching a huge list for one, for each of many faults, would not be.
const LONGEST = 64;
const MOST = 300;

/** How many letters must be added, left out or changed to make one word the other; anything above the most that counts. */
function changesBetween(a: string, b: string, most: number): number {
  let above = new Uint8Array(b.length + 1);
  let current = new Uint8Array(b.length + 1);
  for (let column = 0; column <= b.length; column++) above[column] = column;
  for (let row = 1; row <= a.length; row++) {
    let least = row;
    current[0] = row;
    for (let column = 1; column <= b.length; column++) {
      const change = (above[column - 1] ?? 0) + (a.charCodeAt(row - 1) === b.charCodeAt(column - 1) ? 0 : 1);
      const changes = Math.min(change, (above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1);
      current[column] = changes;
      least = Math.min(least, changes);
    }
    // Later rows are never below the least of an earlier one.
    if (least > most) return least;
    [above, current] = [current, above];
  }
  return above[b.length] ?? 0;
}
