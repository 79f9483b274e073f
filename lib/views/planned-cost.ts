import 'server-only';
import { draftOfLines } from '@/shared/forms/recipe';
import type { Micros } from '@/shared/quantity/amounts';
import { dayOf } from '@/shared/time/zone';
import { type BooksBefore, booksBefore } from '../data/books-before';
import type { SpotNamed } from '../data/container-names';
import { plannedLines } from '../engine/mix/planned-lines';
import { readLine } from '../engine/mix/read-line';
import type { Application, Container, Shop } from '../engine/shop';
import { spotsNamed } from './bottle-address';
import type { HereNow } from './house';

/** What a finished mix was to cost, product by product, as far as the books can still tell. */
export type PlannedCost = {
  /** Null where it is not known. */
  lines: { product: { id: string; name: string }; micros: Micros | null }[];
  material: Micros | null;
  /** Whether these are the lines of its sheet; else they are what the recipe comes to for what was sprayed. */
  isAsSaid: boolean;
};

/**
 * What a record's mix was to cost by line.
 *
 * Gives    null where nobody can say any more: a record that drew nothing here, without how much was sprayed, or by a
 *          recipe that cannot be read any more
 */
export async function plannedCost(
  { id, shop }: Pick<HereNow, 'id' | 'shop'>,
  record: Application,
): Promise<PlannedCost | null> {
  const before = record.sprayed && (await booksBefore(id, record.id));
  if (!record.sprayed || !before) return null;
  const ingredients = draftOfLines(before.ingredients).flatMap((line) => {
    const reading = readLine(shop, line);
    return reading.ok ? reading.value : [];
  });
  if (ingredients.length < before.ingredients.length) return null;
  const { recipe, sprayed, benches, startedAt, plannedCost: said } = record;
  const { lines, ...rest } = plannedLines(shop, {
    ...{ recipe, ingredients, benches, said, sprayMl: sprayed, day: dayOf(shop.zone, startedAt) },
    containers: stoodThen(shop, before, await spotsNamed(id)),
  });
  return {
    lines: lines.map(({ product, cost }) => ({ product: { id: product.id, name: product.name }, micros: cost })),
    ...rest,
  };
}

/** The shop's containers as they stood then, without those that came later. */
function stoodThen({ containers }: Shop, before: BooksBefore, spots: SpotNamed): Container[] {
  return containers.flatMap((container) => {
    const spot = spots(container.lot, container.place);
    const then = before.containers.find(({ lotId, place }) => lotId === spot?.lotId && place === spot.place);
    if (!then) return [];
    const { remaining, openedOn, expiresOn } = then;
    return { ...container, remaining, openedOn, expiresOn };
  });
}
