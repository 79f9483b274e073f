type LotOfOrder = { order: string | null; offer: string | null; count: number };

/** How many packs of one offer have come of an order: those of the lots that name both. */
export const packsCame = (lots: readonly LotOfOrder[], order: string, offer: string): number =>
  lots.filter((lot) => lot.order === order && lot.offer === offer).reduce((sum, { count }) => sum + count, 0);

type OrderLines = { id: string; lines: readonly { offer: string; count: number }[] };

/**
 * How many packs of each line of an order have come. A lot names the offer and not the line: where several lines order
 * one offer, what came fills one after the other, and what is too much stands with the last of them.
 */
export function cameByLine(lots: readonly LotOfOrder[], { id, lines }: OrderLines): number[] {
  const left = new Map(lines.map(({ offer }) => [offer, packsCame(lots, id, offer)]));
  return lines.map(({ offer, count }, place) => {
    const came = left.get(offer) ?? 0;
    const isLast = !lines.slice(place + 1).some((later) => later.offer === offer);
    const own = isLast || came < count ? came : count;
    left.set(offer, came - own);
    return own;
  });
}
