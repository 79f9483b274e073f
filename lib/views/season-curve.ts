import 'server-only';
import type { z } from 'zod';
import type { SeasonCurveQuestion } from '@/shared/forms/season-curve';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { toNumber } from '@/shared/quantity/exact';
import type { Clock } from '../clock';
import { shopFileOf } from '../data/snapshot';
import { shopOfFile } from '../engine/shop-of-file';
import { askedShop } from './asked-shop';
import { curveNow, equivalentsNow } from './equivalents-now';

/** What a season costs with each candidate that is allowed, by how much is sprayed in it: mL, and micros. */
export type SeasonCurve = {
  names: string[];
  planned: number;
  points: { sprayMl: number; costs: (number | null)[] }[];
};

/** The season's cost against the season's use. Refuses 'not-found'. */
export async function seasonCurve(
  { shop: id, recipe, product }: z.output<typeof SeasonCurveQuestion>,
  clock: Clock,
): Promise<Outcome<SeasonCurve>> {
  const here = await askedShop(id);
  if (!here.ok) return here;
  const file = await shopFileOf(here.value.id);
  const asked = { id: here.value.id, file, today: clock.today(shopOfFile(file).zone) };
  const found = await equivalentsNow(asked, { recipe, product });
  if (!found) return refuse({ code: 'not-found', what: 'product', id: product });
  const allowed = found.candidates.filter(({ season }) => season !== null);
  const candidates = allowed.map((one) => one.product.id);
  const points = await curveNow(asked, { recipe, product, candidates });
  return accept({
    names: allowed.map((one) => one.product.name),
    planned: toNumber(found.season.sprayMl),
    points: points.map(({ sprayMl, costs }) => ({ sprayMl: toNumber(sprayMl), costs })),
  });
}
