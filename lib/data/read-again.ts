import 'server-only';
import type { Collection } from '@/lib/engine/exchange/compare';
import type { Refusal } from '@/shared/outcome';
import { type PartRead, partFaults } from '@/shared/shop-file/part-faults';
import type { Rows } from './database';
import { rawShop } from './shop-rows';
import type { Touched } from './touched';

/**
 * Read what a command has written once more, as every page and the export read it, while it can still be rolled back:
 * what no reader can read must never be kept, because nothing could take it back.
 *
 * Takes    the rows of the command's own transaction, and what it touched. Only that is read, unless nobody knows what
 *          it was: then the whole shop is
 * Gives    the first thing that cannot be read, as the refusal; null when all of it can. What could not be read before
 *          and was left alone is not held against the command
 */
export async function notReadable(rows: Rows, shopId: string, touched: Touched): Promise<Refusal | null> {
  if (!touched.isUnknown && touched.things.size === 0) return null;
  const raw = await rawShop(rows, shopId, touched.isUnknown ? null : touched.things);
  if (!raw) return null;
  const fault = partFaults(raw, touched.isUnknown).find(({ path }) => isOfCommand(path, raw, touched));
  return fault ? { code: 'cannot-be-read', path: fault.text, said: fault.message } : null;
}

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
