import 'server-only';
import { isNew } from '@/shared/api/import-bodies';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { fingerprint } from '../data/fingerprint';
import { shopFileOf } from '../data/snapshot';
import { type Comparison, compare } from '../engine/exchange/compare';
import { askedShop } from './asked-shop';

/** What an import would do, and the fingerprint that confirms it was seen. Null for a new shop, which nobody else can change. */
export type ImportPreview = { name: string; comparison: Comparison; fingerprint: string | null };

/**
 * What bringing a shop file in would add and change, before anything is changed.
 *
 * Takes    "new" or the id of a shop, and the text of the file
 * Refuses  'faults' with everything wrong in the file, each with its place; 'not-found'
 */
export async function importPreview(into: string, text: string): Promise<Outcome<ImportPreview>> {
  const parsed = parseShopFile(text);
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const { file } = parsed;
  if (isNew(into)) return accept({ name: file.shop.name, comparison: compare(null, file), fingerprint: null });

  const asked = await askedShop(into);
  if (!asked.ok) return asked;
  const current = await shopFileOf(asked.value.id);
  return accept({ name: asked.value.name, comparison: compare(current, file), fingerprint: fingerprint(current) });
}
