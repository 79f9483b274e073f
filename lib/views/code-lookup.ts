import 'server-only';
import { type CodeMeaning, codeMeaning } from '@/shared/codes/code-meaning';
import { isSameGtin } from '@/shared/measure/gtin';
import type { Clock } from '../clock';
import { bottleAddressOf } from './bottle-address';
import { shopNow } from './house';

/** Where a code leads, or what to say when it leads nowhere. */
export type CodeLookup =
  | { kind: 'nothing' }
  | { kind: 'found'; href: string }
  | { kind: 'unknown-gtin'; gtin: string; href: string }
  | { kind: 'told'; message: string }
  | { kind: 'words'; words: string };

/** Where a scanned, typed or pasted code leads in the shop that is looked at. */
export async function lookUpCode(clock: Clock, text: string): Promise<CodeLookup> {
  const meaning = codeMeaning(text);
  switch (meaning.kind) {
    case 'bottle':
      return bottleFound(meaning);
    case 'gtin':
      return productFound(clock, meaning.gtin);
    case 'misread':
      return { kind: 'told', message: meaning.message };
    default:
      return meaning;
  }
}

async function bottleFound({ bottle }: Extract<CodeMeaning, { kind: 'bottle' }>): Promise<CodeLookup> {
  const href = await bottleAddressOf(bottle.lotId, bottle.number - 1);
  if (href) return { kind: 'found', href };
  const message = `This shop has no bottle number ${bottle.number} of a lot “${bottle.lotId}”. The label may be from another shop: look under Setup which one is shown.`;
  return { kind: 'told', message };
}

async function productFound(clock: Clock, gtin: string): Promise<CodeLookup> {
  const products = (await shopNow(clock))?.shop.products ?? [];
  const product = products.find(({ gtins }) => gtins.some((one) => isSameGtin(one, gtin)));
  if (product) return { kind: 'found', href: `/shelf/${encodeURIComponent(product.id)}` };
  return { kind: 'unknown-gtin', gtin, href: `/shelf/new?${new URLSearchParams({ gtin })}` };
}
