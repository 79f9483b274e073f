import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { fingerprint } from '../data/fingerprint';
import { shopFileOf } from '../data/snapshot';
import { type Comparison, compare } from '../engine/exchange/compare';

/** What an import would do, and the fingerprint that confirms it was seen. Null for a new shop, which nobody else can change. */
export type ImportPreview = { name: string; comparison: Comparison; fingerprint: string | null };

/**
 * What bringing a shop file in would add and change, before anything is changed.
 *
 * Takes    the shop, or null for a new one, and the text of the file
 * Refuses  'faults' with everything wrong in the file, each with its place
 */
export async function filePreviewOf(
  into: { id: string; name: string } | null,
  text: string,
): Promise<Outcome<ImportPreview>> {
  const parsed = parseShopFile(text);
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const { file } = parsed;
  if (into === null) return accept({ name: file.shop.name, comparison: compare(null, file), fingerprint: null });
  const current = await shopFileOf(into.id);
  return accept({ name: into.name, comparison: compare(current, file), fingerprint: fingerprint(current) });
}
