import type { ShopFile } from '@/shared/shop-file/contract';
import type { LineNote } from './asked';
import { lowered } from './find-by-name';
import type { Matched } from './match-columns';
import type { ReadLine } from './read-lines';

/** Lines that would bring a second product of a name. That may be meant, so it is said and not refused. */
export function nameWarnings(
  { products }: ShopFile,
  lines: readonly ReadLine[],
  columns: readonly Matched[],
): LineNote[] {
  const header = columns.find(({ column }) => column?.field === 'name')?.header ?? null;
  const seen = new Map(products.map(({ id, name }) => [lowered(name), { id, where: `is in the shop as "${id}"` }]));
  return lines.flatMap(({ line, thing }) => {
    if (typeof thing.name !== 'string') return [];
    const other = seen.get(lowered(thing.name));
    if (!other) seen.set(lowered(thing.name), { id: String(thing.id), where: `stands on line ${line}` });
    if (!other || other.id === thing.id) return [];
    const message = `Another product of this name ${other.where}. If it is the same, give this line its id.`;
    return [{ line, column: header, message }];
  });
}
