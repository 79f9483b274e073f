import type { Refusal } from '../outcome';
import type { Collection } from './check-ids';
import type { ShopFile } from './contract';
import type { Path } from './path';

/** One value that no shop file may hold: where in its thing, what it is, and what is wrong with it. */
export type OddValue = { path: string; at: Path; message: string; is: unknown };

/** One thing of a shop that cannot be read as it stands in the database. */
export type UnreadThing = {
  list: Collection | 'shop';
  id: string;
  odd: OddValue[];
  /** Whether the shop is read without it; otherwise it is there, and only the odd values are unknown or put tidily. */
  isLeftOut: boolean;
  /** Whether nothing is wrong with it but that it names something that was left out. It is there again with that. */
  isCaused: boolean;
  /** Benches that it may have closed, or that nothing is known of for it: all where nobody can say which. */
  benches: readonly string[] | 'all';
};

/** Stands on a shop file beside its fields, and in no JSON, fingerprint or comparison of it. A build may load this twice. */
const UNREAD: unique symbol = Symbol.for('unread');

type Marked = ShopFile & { [UNREAD]?: readonly UnreadThing[] };

/** The shop without what could not be read, which stays noted beside it. */
export const withUnread = (file: ShopFile, unread: readonly UnreadThing[]): ShopFile =>
  Object.assign({ ...file }, { [UNREAD]: unread });

/** What could not be read of a shop; nothing of one that came from a file. */
export const unreadIn = (file: ShopFile): readonly UnreadThing[] => (file as Marked)[UNREAD] ?? [];

/** The benches of a shop of which nothing can be said, because something that may have closed them cannot be read. */
export function unreadBenches(file: ShopFile): ReadonlySet<string> {
  const unread = unreadIn(file).map(({ benches }) => benches);
  if (unread.includes('all')) return new Set(file.benches.map(({ id }) => id));
  return new Set(unread.flatMap((benches) => (benches === 'all' ? [] : benches)));
}

/** One thing that cannot be read, in a few words: "lot l: receivedOn: …". */
export const unreadInWords = ({ list, id, odd: [first] }: UnreadThing): string =>
  `${list === 'shop' ? 'the shop itself' : `${SINGULAR[list]} ${JSON.stringify(id)}`}${first ? `, ${first.path}: ${first.message}` : ''}`;

export const SINGULAR: Record<Collection, string> = {
  suppliers: 'supplier',
  products: 'product',
  offers: 'offer',
  lots: 'lot',
  benches: 'bench',
  recipes: 'recipe',
  programs: 'program',
  applications: 'record',
  orders: 'order',
};

/** Why a shop in which something cannot be read is not written into a file, or changed by one; null when all of it can. */
export function unreadRefusal(file: ShopFile): Extract<Refusal, { code: 'things-unread' }> | null {
  const unread = unreadIn(file).filter(({ isCaused }) => !isCaused);
  const [first] = unread;
  return first ? { code: 'things-unread', count: unread.length, first: unreadInWords(first) } : null;
}
