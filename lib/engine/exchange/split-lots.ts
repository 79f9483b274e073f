import { type Micros, type Stock, sum } from '@/shared/quantity/amounts';
import { shareOut } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';

/** One container of a lot, as it stands. */
export type LotContainer = {
  place: number;
  remaining: Stock;
  paid: Micros | null;
  openedOn: Day | null;
  expiresOn: Day | null;
  keptIn: string | null;
};

/** Containers that a shop file tells as one lot. */
export type LotPart = { id: string; containers: LotContainer[] };

/**
 * How a lot of several containers is told in a shop file, where a lot of several is that many full ones: those that are
 * still full, unopened and alike stay together under the lot's own id, and each other one becomes a lot of its own, with
 * its share of what was paid.
 *
 * Takes    the lot, its containers in order, and whether another lot already has an id
 */
export function partsOf(
  lot: { id: string; size: Stock },
  containers: readonly LotContainer[],
  isTaken: (id: string) => boolean,
): LotPart[] {
  const [first, ...others] = containers;
  if (!first) return [];
  if (others.length === 0) return [{ id: lot.id, containers: [first] }];
  const together = alike(containers.filter(({ remaining, openedOn }) => remaining === lot.size && openedOn === null));
  const apart = containers.filter((one) => !together.includes(one));
  const parts = apart.map((one) => ({ id: partId(lot.id, one.place, isTaken), containers: [one] }));
  return together.length > 0 ? [{ id: lot.id, containers: together }, ...parts] : parts;
}

/** What was paid for the containers of a part; null when nobody knows. */
export const paidFor = ({ containers }: LotPart): Micros | null => {
  const known = containers.flatMap(({ paid }) => (paid === null ? [] : [paid]));
  // What cannot be is given as it is, for the contract to refuse it.
  const odd = known.find((paid) => !(paid >= 0));
  if (odd !== undefined) return odd;
  return known.length === containers.length ? sum(known) : null;
};

/** The lot that an id is a part of, by its form; null when it is no part. */
export const parentOf = (id: string): string | null => /^(.+)~+\d+$/.exec(id)?.[1]?.replace(/~+$/, '') ?? null;

/**
 * Of full containers, those that one lot can tell: one expiry, one place to stand, and a price for all that gives each its own share again
 * when it is shared out.
 */
function alike(full: readonly LotContainer[]): LotContainer[] {
  const [first] = full;
  if (!first) return [];
  const same = full.filter(
    ({ expiresOn, keptIn, paid }) =>
      expiresOn === first.expiresOn && keptIn === first.keptIn && (paid === null) === (first.paid === null),
  );
  const shares = same.flatMap(({ paid }) => (paid === null ? [] : [paid]));
  const again = shareOut(sum(shares), same.length);
  return shares.every((share, place) => share === again[place]) ? same : [];
}

/** "l1~2" is the second container of lot "l1". A longer sign where somebody already named a lot like that. */
function partId(lot: string, place: number, isTaken: (id: string) => boolean): string {
  for (let sign = '~'; ; sign += '~') {
    const end = `${sign}${place + 1}`;
    const id = lot.slice(0, LONGEST_ID - end.length) + end;
    if (!isTaken(id)) return id;
  }
}

/** As long as an id may be in a shop file. */
const LONGEST_ID = 64;
