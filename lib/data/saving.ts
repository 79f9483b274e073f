import { plainMoney } from '@/lib/engine/exchange/plain-text';
import { readMoney } from '@/shared/measure/money';
import type { Reading } from '@/shared/outcome';
import * as time from '@/shared/time/hours';
import { asMicros, small, toStored } from './whole';

/** A thing of a file that is to be saved: new, or in the place of what the shop has under its id. */
export type Saving<T> = { item: T; position: number; isNew: boolean };

/** The rows of those things that are new, each under its id and at its place in the shop. */
export const newRows = <T extends { id: string }, Row>(
  shopId: string,
  things: readonly Saving<T>[],
  rowOf: (item: T) => Row,
) =>
  things
    .filter(({ isNew }) => isNew)
    .map(({ item, position }) => ({ shopId, id: item.id, position: small(position), ...rowOf(item) }));

/** Money as it stands in a file, for its column. */
export function storedMoney<T extends string | null>(text: T): T extends null ? null : bigint;
export function storedMoney(text: string | null): bigint | null {
  return text === null ? null : toStored(parsed(readMoney(text)));
}

/** Money out of its column, as it stands in a file. What is no money gives a text that no file may hold. */
export const moneyText = (stored: bigint | null): string | null =>
  stored === null ? null : plainMoney(asMicros(stored));

/** The value of a text that passed parsing. Throws RangeError when it did not. */
export function parsed<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new RangeError(`save: ${reading.message}`);
  return reading.value;
}

/** Hours of an interval in whole minutes, rounded up, so that no interval is kept shorter than it was given. */
export const minutesUp = (hours: number | null): number | null =>
  hours === null ? null : small(time.minutesUp(hours));

/** Hours for which a mixed spray keeps in whole minutes, rounded down, so that none is kept longer than it may be. */
export const minutesDown = (hours: number | null): number | null =>
  hours === null ? null : small(time.minutesDown(hours));
