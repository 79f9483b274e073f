import 'server-only';
import { tidyText } from '@/shared/text/text-fault';
import { benchNames } from '../data/bench-names';
import { keptHere } from '../data/kept';
import { benchAnchor } from './bench-anchor';
import type { BoardBench } from './keep-out-board';

/** What a shop and its benches are called, which is enough to keep people out of each. */
export type KnownBenches = { shop: string | null; benches: { id: string; name: string }[] };

/** What boards showed last, for the time when not even the names can be read. */
const shown = keptHere<KnownBenches>('benches of boards', { things: 64 });

/** Keep the names on a board that could be read; none of one that there is no more. Takes whose board it is. */
export function rememberBenches(whose: string, board: KnownBenches | null): void {
  if (board === null) shown.delete(whose);
  else shown.set(whose, { shop: board.shop, benches: board.benches.map(({ id, name }) => ({ id, name })) });
}

/**
 * The benches of a shop that is not read yet, or cannot be read as a whole: as their rows name them, and as the last board
 * did. Each is kept out of, and nobody knows until when.
 *
 * Takes   whose board it is, and how its shop is found, which may fail
 */
export async function reducedBenches(whose: string, shopOf: () => Promise<string | null>) {
  const read = await shopOf()
    .then((shop) => (shop === null ? null : benchNames(shop)))
    .catch(() => null);
  const before = shown.get(whose);
  const all = [...(read?.benches ?? []), ...(before?.benches ?? [])];
  const byId = new Map(all.toReversed().map((bench) => [bench.id, bench]));
  const ids = new Set(all.map(({ id }) => id));
  return {
    shop: tidyText(read?.shop ?? before?.shop ?? '') || null,
    benches: [...ids].map((id) => keptOut(id, tidyText(byId.get(id)?.name ?? '') || id)),
  };
}

const keptOut = (id: string, name: string): BoardBench => ({
  ...{ id, anchor: benchAnchor(id), name, state: 'unknown', word: 'KEEP OUT (not known)' },
  ...{ when: null, left: null, because: [], ways: [], working: null },
});
