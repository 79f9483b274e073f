/* Numbers that look like chance, the same for the same seed. */

export type Pick = {
  /** A whole number from 0 up to, not including, another. */
  below: (end: number) => number;
  /** True in so many of a hundred. */
  chance: (percent: number) => boolean;
  one: <T>(list: readonly T[]) => T;
  many: <T>(least: number, most: number, make: (at: number) => T) => T[];
};

export function pickFrom(seed: number): Pick {
  let state = (seed * 2_654_435_761 + 12_345) >>> 0;
  const below = (end: number): number => {
    // xorshift, 32 bits.
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % end;
  };
  if (state === 0) state = 1;
  return {
    below,
    chance: (percent) => below(100) < percent,
    one: (list) => {
      const [first] = list;
      if (first === undefined) throw new Error('nothing can be picked from an empty list');
      return list[below(list.length)] ?? first;
    },
    many: (least, most, make) => Array.from({ length: least + below(most - least + 1) }, (_, at) => make(at)),
  };
}
