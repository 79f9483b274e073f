import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Zone } from '@/shared/time/zone';
import type { Clock } from '../clock';
import type { ShopListed } from '../data/shops';
import { type AcceptScreen, acceptRecordsScreen, acceptScreen } from './accept-rows';
import { type BackupsSeen, backupsSeen } from './backups';
import { type DatabaseState, databaseState } from './database-state';
import { type HereNow, shopNow, tooMuchOf } from './house';
import { shopsAndShown } from './shown-shop';
import { unreadScreen } from './unread';

export type SetupScreen = {
  shops: readonly ShopListed[];
  /** The shop that is looked at; null in a database without any. */
  shown: {
    id: string;
    settings: ShopFile['shop'];
    counts: [what: string, count: number][];
    /** Why no page can look ahead; null when they can. */
    tooMuch: string | null;
  } | null;
  /** Damaged rows that may be accepted as they stand; null for none. */
  accept: AcceptScreen | null;
  /** Records that do not fit their chain and may be accepted as they stand; null for none. */
  acceptRecords: AcceptScreen | null;
  /** What of the shop that is looked at cannot be read. */
  unread: ReturnType<typeof unreadScreen>;
  database: DatabaseState;
  backups: BackupsSeen;
};

/**
 * What the shop says about itself, which shops this database holds, and how sound it is. Of a database that cannot be
 * read it says only that.
 */
export async function setupScreen(clock: Clock): Promise<SetupScreen> {
  const database = await databaseState();
  try {
    const { shops } = await shopsAndShown();
    const here = await shopNow(clock);
    const unread = here ? unreadScreen(here.file) : NOTHING_UNREAD;
    const damaged = database.state === 'damaged' ? here : null;
    const accept = damaged && (await acceptScreen(damaged.id));
    const acceptRecords = damaged && (await acceptRecordsScreen(damaged.id));
    const shown = here && (await shownShop(here));
    return { shops, shown, accept, acceptRecords, unread, database, backups: backupsAt(here, clock) };
  } catch (error) {
    if (database.state !== 'damaged') throw error;
    const nothing = { shops: [], shown: null, accept: null, acceptRecords: null, unread: NOTHING_UNREAD };
    return { ...nothing, database, backups: backupsAt(null, clock) };
  }
}

/** By the clock on the wall of the shop that is looked at; in UTC where none can be read. */
function backupsAt(here: HereNow | null, clock: Clock): BackupsSeen {
  const zone = here?.shop.zone ?? Zone.parse('UTC');
  return backupsSeen({ now: clock.now(), today: clock.today(zone), zone });
}

async function shownShop(here: HereNow): Promise<SetupScreen['shown']> {
  const tooMuch = await tooMuchOf(here);
  return { id: here.id, settings: here.file.shop, counts: countsOf(here.file), tooMuch };
}

const NOTHING_UNREAD: SetupScreen['unread'] = { things: [], caused: [] };

const countsOf = (file: ShopFile): [string, number][] => [
  ['suppliers', file.suppliers.length],
  ['products', file.products.length],
  ['offers', file.offers.length],
  ['lots', file.lots.length],
  ['benches', file.benches.length],
  ['recipes', file.recipes.length],
  ['programs', file.programs.length],
  ['application records', file.applications.length],
];
