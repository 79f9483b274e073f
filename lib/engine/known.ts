import { readMoney } from '@/shared/measure/money';
import type { Reading } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';

/*
 * Reading a file that passed parsing: what cannot be read in it after all is a fault of ours, and throws RangeError.
 */

export type Find<T> = (id: string) => T;

export function finder<T extends { id: string }>(what: string, things: T[]): Find<T> {
  const byId = new Map(things.map((thing) => [thing.id, thing]));
  return (id) => {
    const thing = byId.get(id);
    if (!thing) throw new RangeError(`shop file: there is no ${what} ${JSON.stringify(id)}`);
    return thing;
  };
}

export function known<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new RangeError(`shop file: ${reading.message}`);
  return reading.value;
}

export const maybe = <T>(text: string | null, reader: (text: string) => Reading<T>): T | null =>
  text === null ? null : known(reader(text));

export const money = (text: string | null): Micros | null => maybe(text, readMoney);
