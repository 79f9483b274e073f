import { dayAfter } from './calendar';
import { type Fraction, fraction, rounded } from './fraction';
import { type Goods, stockOf } from './measures';

/* The containers of one product, day by day. */

export type Container = {
  lot: string;
  size: bigint;
  left: bigint;
  /** Micros; null when nobody noted it. */
  paid: bigint | null;
  receivedOn: string;
  openedOn: string | null;
  /** Printed, or by how long it keeps unopened; null when neither is known. */
  keepsUntil: string | null;
  openedDays: number | null;
};

type Lot = {
  id: string;
  pack: string;
  count: number;
  remaining: string | null;
  paid: string | null;
  receivedOn: string;
  openedOn: string | null;
  expiresOn: string | null;
};
type Life = { unopenedDays: number | null; openedDays: number | null };

export const micros = (text: string): bigint => {
  const [whole = '0', part = ''] = text.split('.');
  return BigInt(whole) * 1_000_000n + BigInt(part.padEnd(6, '0'));
};

export function containersOf(lot: Lot, goods: Goods, life: Life): Container[] {
  const size = stockOf(lot.pack, goods);
  const left = lot.remaining === null || lot.count > 1 ? size : stockOf(lot.remaining, goods);
  const keeps = life.unopenedDays === null ? null : dayAfter(lot.receivedOn, life.unopenedDays);
  return Array.from({ length: lot.count }, (_, place) => ({
    lot: lot.id,
    size,
    left,
    paid: lot.paid === null ? null : shareOf(micros(lot.paid), BigInt(lot.count), BigInt(place)),
    receivedOn: lot.receivedOn,
    openedOn: lot.openedOn,
    keepsUntil: lot.expiresOn ?? keeps,
    openedDays: life.openedDays,
  }));
}

/** What was paid, in equal shares; the micros that are left over go to the first ones. */
const shareOf = (paid: bigint, count: bigint, place: bigint): bigint => paid / count + (place < paid % count ? 1n : 0n);

/** The last day on which a container may be used; null when nobody can say. */
export function lastDay({ keepsUntil, openedOn, openedDays }: Container): string | null {
  if (openedOn === null || openedDays === null) return keepsUntil;
  const opened = dayAfter(openedOn, openedDays);
  return keepsUntil !== null && keepsUntil < opened ? keepsUntil : opened;
}

const NEVER = '9999-12-31';

/** Whose turn comes first: the sooner gone, then the opened, then the sooner received, then by id. */
function compareTurns(a: Container, b: Container): number {
  const keys = (one: Container) => [lastDay(one) ?? NEVER, one.openedOn === null ? '1' : '0', one.receivedOn, one.lot];
  const [first, second] = [keys(a), keys(b)];
  const place = first.findIndex((key, at) => key !== second[at]);
  if (place < 0) return 0;
  return (first[place] ?? '') < (second[place] ?? '') ? -1 : 1;
}

/** What it costs to take an amount out of a container, and the container with that much less in it. */
function takeOut(container: Container, amount: bigint): bigint | null {
  const before = container.size - container.left;
  container.left -= amount;
  const { paid, size } = container;
  if (paid === null) return null;
  const upTo = (out: bigint) => rounded(fraction(paid * out, size));
  return upTo(before + amount) - upTo(before);
}

export const isHere = (day: string) => (one: Container) => one.receivedOn <= day;
export const isGone = (day: string) => (one: Container) => {
  const last = lastDay(one);
  return last !== null && last < day;
};

/** Pours away what may not be used any more on a day. Gives each amount with its cost. */
export function pourAway(shelf: Container[], day: string): { amount: bigint; cost: bigint | null }[] {
  const dead = shelf.filter((one) => isHere(day)(one) && isGone(day)(one) && one.left > 0n);
  return dead.map((one) => {
    const amount = one.left;
    return { amount, cost: takeOut(one, amount) };
  });
}

const smaller = (a: bigint, b: bigint): bigint => (a < b ? a : b);

/** Draws for a demand. Gives what came, and what it cost (null as soon as a part of that is unknown). */
export function draw(shelf: Container[], day: string, wanted: bigint): { drawn: bigint; cost: bigint | null } {
  let drawn = 0n;
  let cost: bigint | null = 0n;
  while (drawn < wanted) {
    const [next] = shelf.filter((one) => isHere(day)(one) && !isGone(day)(one) && one.left > 0n).sort(compareTurns);
    if (!next) break;
    const amount = smaller(next.left, wanted - drawn);
    next.openedOn ??= day;
    const each = takeOut(next, amount);
    cost = cost === null || each === null ? null : cost + each;
    drawn += amount;
  }
  return { drawn, cost };
}

/** What an amount costs at a price per unit. */
export const priced = (amount: bigint, perUnit: Fraction): bigint =>
  rounded(fraction(amount * perUnit.over, perUnit.under));
