import 'server-only';
import type { Comparison } from '@/lib/engine/exchange/compare';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { UnreadThing } from '@/shared/shop-file/unread';
import type { Rows } from './database';
import { newestVersions } from './save-recipes';
import { recordReader, saveRecords } from './save-records';
import { saveShop } from './save-shop';
import { small } from './whole';
import type { Stamp } from './writer';

/** A thing as it is to stand, in the shop's file in its plain form, and why. */
type Right = { file: ShopFile; list: UnreadThing['list']; id: string; reason: string };

/** Save a thing that could not be read as it is to stand. A record gets a further version; the one that was stays. */
export async function savePutRight(rows: Rows, stamp: Stamp, right: Right): Promise<void> {
  if (right.list === 'applications') return amendRecord(rows, stamp, right);
  if (right.list === 'lots') await correctReceived(rows, stamp, right);
  await saveShop(rows, stamp, right.file, changeOf(right), right.reason);
}

async function amendRecord(rows: Rows, stamp: Stamp, { file, id, reason }: Right): Promise<void> {
  const record = file.applications.find((one) => one.id === id);
  if (!record) throw new RangeError(`put right: there is no record ${id}`);
  const { shopId } = stamp;
  const newest = await rows.applicationVersion.aggregate({
    where: { shopId, applicationId: id },
    _max: { number: true },
  });
  const number = small((newest._max.number ?? 0) + 1);
  const recipeNumber = (await newestVersions(rows, shopId)).get(record.recipe) ?? 0;
  const read = recordReader(file)(record);
  await saveRecords(rows, stamp, [{ ...read, id, position: 0, number, reason, recipeNumber }]);
}

/** The day a lot came is a fact that nothing else corrects. */
async function correctReceived(rows: Rows, stamp: Stamp, { file, id }: Right): Promise<void> {
  const lot = file.lots.find((one) => one.id === id);
  const { shopId } = stamp;
  if (lot) await rows.lot.updateMany({ where: { shopId, id }, data: { receivedOn: lot.receivedOn } });
}

/** One thing that changes, and nothing else. */
function changeOf({ list, id }: Right): Comparison {
  const none = { added: [], changed: [], unchanged: [], leftAlone: [] };
  const collections: Comparison['collections'] = {
    ...{ suppliers: none, products: none, offers: none, lots: none, benches: none },
    ...{ recipes: none, programs: none, applications: none, orders: none },
  };
  const isShop = list === 'shop';
  return {
    settings: isShop ? [{ field: 'shop', from: null, to: null }] : [],
    collections: isShop
      ? collections
      : { ...collections, [list]: { ...none, changed: [{ id, name: null, fields: [] }] } },
    faults: [],
  };
}
