import 'server-only';
import { Day } from '@/shared/time/day';
import { Zone } from '@/shared/time/zone';
import { database, type Rows } from './database';
import { keptHere } from './kept';

/** A shop in the list of those that this database holds. */
export type ShopListed = { id: string; name: string; isDemo: boolean; createdOn: Day };

const lists = keptHere<{ state: string; shops: Promise<readonly ShopListed[]> }>('lists of shops', { things: 4 });

/** Every shop in the database, the oldest first. Read anew when a shop has come or changed, in whatever process. */
export async function shopsHere(): Promise<readonly ShopListed[]> {
  const { file, inode, reader, marks } = await database();
  const [name, state] = [`${file} ${inode}`, await marks.stateOfAll()];
  const kept = lists.get(name);
  if (kept?.state === state) return kept.shops;
  // In a transaction of its own, so that it is never read inside an older one and kept as newer than it is.
  const shops = reader.$transaction(readShops, PATIENCE);
  lists.set(name, { state, shops });
  shops.catch(() => lists.delete(name));
  return shops;
}

const PATIENCE = { maxWait: 10_000, timeout: 30_000 };

async function readShops(reader: Rows): Promise<ShopListed[]> {
  const first = { orderBy: { recordedAt: 'asc' }, take: 1, select: { recordedAt: true } } as const;
  const shops = await reader.shop.findMany({ select: { ...LISTED.select, commands: first } });
  // Shops made on one day are told apart by the moment of the command that made them.
  const madeAt = ({ commands: [made] }: (typeof shops)[number]) => Number(made?.recordedAt ?? 0n);
  return shops.toSorted((a, b) => madeAt(a) - madeAt(b)).map(listed);
}

/** One shop by its id; null when there is none. */
export async function shopHere(id: string): Promise<ShopListed | null> {
  const { reader } = await database();
  const shop = await reader.shop.findUnique({ ...LISTED, where: { id } });
  return shop && listed(shop);
}

const LISTED = { select: { id: true, name: true, isDemo: true, createdOn: true } } as const;

const listed = ({
  id,
  name,
  isDemo,
  createdOn,
}: Omit<ShopListed, 'createdOn'> & { createdOn: string }): ShopListed => ({
  id,
  name,
  isDemo,
  createdOn: Day.parse(createdOn),
});

/** The time zones of the shops here, the oldest shop first. */
export async function shopZones(): Promise<Zone[]> {
  const { reader } = await database();
  const shops = await reader.shop.findMany({
    select: { timeZone: true },
    orderBy: [{ createdOn: 'asc' }, { id: 'asc' }],
  });
  return shops.map(({ timeZone }) => Zone.parse(timeZone));
}
