import type { ShelfQuery } from '@/lib/views/shelf';

/** What the shelf shows when nothing else is asked for. */
const USUAL: ShelfQuery = { as: 'bottles', sort: 'name', kind: '', place: '', find: '', away: '', page: '' };

/** The address of the shelf as it is asked for, with nothing in it that goes without saying. */
export function shelfHref(query: ShelfQuery): string {
  const asked = Object.entries(query).filter(([name, value]) => value !== USUAL[name as keyof ShelfQuery]);
  return asked.length === 0 ? '/shelf' : `/shelf?${new URLSearchParams(asked)}`;
}
