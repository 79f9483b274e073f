import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { unreadRefusal } from '@/shared/shop-file/unread';
import { shopFileOf } from '../data/snapshot';

/** A document in pieces of its text, and the name of its shop. */
export type InPieces = { pieces: Iterable<string>; name?: string };

/** A whole shop as the text of its shop file, laid out for people. Refuses 'things-unread', as the export does. */
export async function shopFilePieces(shopId: string): Promise<Outcome<InPieces>> {
  const file = await shopFileOf(shopId);
  const unread = unreadRefusal(file);
  return unread ? refuse(unread) : accept({ pieces: cut(`${JSON.stringify(file, null, 2)}\n`), name: file.shop.name });
}

const PIECE = 65_536;

function* cut(text: string): Generator<string> {
  for (let at = 0; at < text.length; ) {
    // A sign of two halves is never cut apart.
    const isHalf = /[\uD800-\uDBFF]/.test(text[at + PIECE - 1] ?? '');
    const end = at + (isHalf ? PIECE - 1 : PIECE);
    yield text.slice(at, end);
    at = end;
  }
}
