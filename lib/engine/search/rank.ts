import { fold } from '@/shared/text/fold';

/** What something can be found by. */
export type FoundBy = {
  /** What it is called. */
  name: string;
  /** What names it and nothing else: a bar code, a registration, an id, the code of a label. */
  codes: readonly string[];
  /** What else somebody may remember of it: a substance, a place, the product that is in a bottle. */
  also: readonly string[];
};

/** How well something answers what was typed; the lower the better, null when it does not. */
type Rank = number | null;

const [EXACT_CODE, EXACT_NAME, BEGINS, WORD_BEGINS, HOLDS, BESIDE] = [0, 1, 2, 3, 4, 5];

/** Whether a thing was meant exactly, by a code or its whole name; and whether only something beside its name answers. */
export const isExact = (rank: number): boolean => rank <= EXACT_NAME;
export const isBeside = (rank: number): boolean => rank === BESIDE;

/**
 * Those things that answer what was typed, the best first: an exact code, the exact name, what begins with it, what has
 * a word that does, what holds it somewhere, and last what only something beside the name answers. Of several words,
 * each must be answered, and the worst answer counts. Equal ones are in the order of their names.
 *
 * Gives    nothing for a text of nothing
 */
export function findIn<T>(things: readonly T[], typed: string, foundBy: (thing: T) => FoundBy): Ranked<T>[] {
  const asked = fold(typed);
  if (asked === '') return [];
  return things
    .flatMap((thing) => {
      const by = foundBy(thing);
      const rank = rankOf(asked, by);
      return rank === null ? [] : [{ thing, rank, name: by.name }];
    })
    .sort((a, b) => a.rank - b.rank || a.name.localeCompare(b.name));
}

export type Ranked<T> = { thing: T; rank: number };

/** How well one thing answers a folded text. */
function rankOf(asked: string, { name, codes, also }: FoundBy): Rank {
  const folded = { name: fold(name), codes: codes.map(fold), also: also.map(fold) };
  if (folded.codes.includes(asked)) return EXACT_CODE;
  if (folded.name === asked) return EXACT_NAME;
  if ([folded.name, ...folded.codes].some((text) => text.startsWith(asked))) return BEGINS;
  let worst = WORD_BEGINS;
  for (const word of asked.split(' ')) {
    const rank = rankOfWord(word, folded);
    if (rank === null) return null;
    worst = Math.max(worst, rank);
  }
  return worst;
}

function rankOfWord(word: string, { name, codes, also }: FoundBy): Rank {
  if ([name, ...codes].some((text) => hasWordLike(text, word))) return WORD_BEGINS;
  if ([name, ...codes].some((text) => text.includes(word))) return HOLDS;
  return also.some((text) => text.includes(word)) ? BESIDE : null;
}

/** Whether one of the words of a text begins like this; a hyphen, a slash or a bracket begins a word, too. */
const hasWordLike = (text: string, word: string): boolean =>
  text.split(/[^\p{L}\p{N}.]+/u).some((each) => each.startsWith(word)) || text.startsWith(word);
