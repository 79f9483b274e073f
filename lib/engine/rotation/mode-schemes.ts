/*
 * What the three published schemes of modes of action say about their groups: IRAC for insecticides and miticides, FRAC
 * for fungicides and bactericides, HRAC for herbicides.
 *
 * Seen     IRAC Mode of Action Classification 7.3, note e (in a copy): what is in groups 8, 13 and UN is thought to share no
 *          target and may be rotated freely. FRAC Code Lists 2018 to 2021 (in copies, introduction): M is multi-site, U is
 *          unknown, BM is biologicals of several modes without a dominating one; and 2018, row of code 4: high risk
 * Memory   IRAC 10 and 11: UNB, UNE, UNF, UNM, UNP and UNV beside UN. FRAC Code Lists 2020 to 2024: NC is not classified;
 *          the comments of codes 1, 10, 11, 25 and 41 say "high risk" (those of 2, 7, 21, 43, 45 and 49 say "medium to
 *          high", which is less). HRAC 2020: 0 is unknown, and the letters before it with the numbers that took their place
 */

export type Scheme = 'IRAC' | 'FRAC' | 'HRAC';

/**
 * How a scheme sees the repetition of a group.
 *
 *   counts            what is in it shares a target, so that resistance to one is resistance to all
 *   high risk         the same, and the scheme says that resistance comes quickly
 *   several targets   multi-site, or without a common target: it may be repeated
 *   unknown           nobody knows the target, or it is not classified
 */
export type Standing = 'counts' | 'high risk' | 'several targets' | 'unknown';

/** How a scheme sees one of its groups, written as `modeGroupsIn` writes it: "4", "M05", "UN". */
export function standingOf(scheme: Scheme | null, group: string): Standing {
  const found = scheme && STANDINGS[scheme].find(([groups]) => groups.test(group));
  return found ? found[1] : 'counts';
}

const STANDINGS: Record<Scheme, [groups: RegExp, standing: Standing][]> = {
  IRAC: [
    [/^(8|13)$/, 'several targets'],
    [/^(UN|N-UN)$/, 'unknown'],
  ],
  FRAC: [
    [/^(M|BM)\d*$/, 'several targets'],
    [/^(U\d*|NC)$/, 'unknown'],
    [/^(1|4|10|11|25|41)$/, 'high risk'],
  ],
  HRAC: [[/^0$/, 'unknown']],
};

/** The group that a scheme puts what is unknown in. */
export const UNKNOWN_GROUP: Record<Scheme, string> = { IRAC: 'UN', FRAC: 'U', HRAC: '0' };

/** The letters of HRAC until 2020 and the groups that they are now. */
export const HRAC_LETTERS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ...{ A: '1', B: '2', C1: '5', C2: '5', C3: '6', D: '22', E: '14', F1: '12', F2: '27', F3: '34', F4: '13' },
    ...{ G: '9', H: '10', I: '18', K1: '3', K2: '23', K3: '15', L: '29', M: '24', N: '15', O: '4', P: '19', Z: '0' },
  }),
);
