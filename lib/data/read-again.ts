import 'server-only';
import type { Collection } from '@/lib/engine/exchange/compare';
import type { Refusal } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type PartRead, partRead } from '@/shared/shop-file/part-faults';
import type { Rows } from './database';
import { rawShop } from './shop-rows';
import type { Touched } from './touched';

/** What stands there now: the first thing that no reader can read; and the whole shop, where all of it was read. */
type ReadAgain = { unread: Refusal | null; file: ShopFile | null };

/**
 * Read what a command has written once more, as every page and the export read it, while it can still be rolled back:
 * what no reader can read must never be kept, because nothing could take it back.
 *
 * Takes    the rows of the command's own transaction, and what it touched. Only that is read, unless nobody knows what
 *          it was, or it is much: then the whole shop is
 * Gives    the first thing that cannot be read, as the refusal; null when all of it can. What could not be read before
 *          and was left alone is not held against the command
 */
export async function readAgain(rows: Rows, shopId: string, touched: Touched): Promise<ReadAgain> {
  if (!touched.isUnknown && touched.things.size === 0) return NOTHING;
  const isWhole = touched.isUnknown || touched.count > MUCH;
  const raw = await rawShop(rows, shopId, isWhole ? null : touched.things);
  if (!raw) return NOTHING;
  const { faults, file } = partRead(raw, isWhole);
  const fault = faults.find(({ path }) => isOfCommand(path, raw, touched));
  const unread: Refusal | null = fault ? { code: 'cannot-be-read', path: fault.text, said: fault.message } : null;
  return { unread, file: isWhole && faults.length === 0 ? file : null };
}

const NOTHING: ReadAgain = { unread: null, file: null };

/** Of more things it is quicker to read the whole shop once, which is to be compared with what it was anyway. */
const MUCH = 200;

/** What is read beside what was written is not judged: the settings, the products that lots and records name. */
function isOfCommand([list, at]: PartRead['path'], raw: NonNullable<Raw>, touched: Touched): boolean {
  if (touched.isUnknown) return true;
  if (list === 'shop') return touched.things.has('shop');
  // In the database a part of a lot stands under the lot that came in, so lots go by other ids there.
  if (list === 'lots') return true;
  const collection = list as Exclude<Collection, 'lots'>;
  return touched.of(collection).has(raw[collection][Number(at)]?.id ?? '');
}

type Raw = Awaited<ReturnType<typeof rawShop>>;
