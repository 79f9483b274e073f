import 'server-only';
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

/** The settings, and the products that lots and records name, are read beside what was written, and are not judged. */
function isOfCommand([list, at]: PartRead['path'], raw: NonNullable<Raw>, touched: Touched): boolean {
  if (touched.isUnknown) return true;
  if (list === 'shop') return touched.things.has('shop');
  return list !== 'products' || touched.of('products').has(raw.products[Number(at)]?.id ?? '');
}

type Raw = Awaited<ReturnType<typeof rawShop>>;
