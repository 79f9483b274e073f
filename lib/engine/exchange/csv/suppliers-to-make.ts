import type { Row } from '@/shared/csv/rows';
import type { ShopFile } from '@/shared/shop-file/contract';
import { findByName, lowered } from './find-by-name';
import type { Matched } from './match-columns';
import { idMaker } from './new-ids';
import { cellText } from './read-lines';

/** A supplier that offers name and the shop does not know, with the line that names it first. */
export type SupplierToMake = { id: string; name: string; line: number };

/** The suppliers that a file names and the shop does not know, each once, however it is written. */
export function suppliersToMake(
  { suppliers }: ShopFile,
  rows: readonly Row[],
  columns: readonly Matched[],
): SupplierToMake[] {
  const place = columns.find(({ column }) => column?.kind.of === 'supplier')?.place;
  if (place === undefined) return [];
  const find = findByName('supplier', suppliers, '');
  const newId = idMaker(suppliers.map(({ id }) => id));
  const made = new Map<string, SupplierToMake>();
  for (const row of rows) {
    const name = cellText(row, place);
    const key = lowered(name);
    if (name === '' || made.has(key) || isKnown(name, find(name).ok, suppliers)) continue;
    made.set(key, { id: newId([name]), name, line: row.line });
  }
  return [...made.values()];
}

/** A name that several have is known, and asked about. */
const isKnown = (name: string, isFound: boolean, suppliers: ShopFile['suppliers']): boolean =>
  isFound || suppliers.some((each) => lowered(each.name) === lowered(name));
