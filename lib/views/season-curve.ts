import 'server-only';
import type { z } from 'zod';
import type { SeasonCurveQuestion } from '@/shared/forms/season-curve';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { compare, exact } from '@/shared/quantity/exact';
import type { Clock } from '../clock';
import { snapshotOf } from '../data/snapshot';
import type { CurvePoint, Equivalents } from '../engine/equivalents/equivalents';
import { equivalentWorking } from '../engine/working/equivalent-figures';
import { equivalentAddress } from '../engine/working/season-figures';
import { askedShop } from './asked-shop';
import { type AskedOf, curveNow, equivalentsNow } from './equivalents-now';
import type { Fig } from './figures';

/** What a season costs with each candidate at one use, and how much is sprayed at it; null where it is not known. */
type CurveRow = { spray: Fig; isPlanned: boolean; isTurn: boolean; costs: (Fig | null)[] };

/** What a season costs with each candidate that is allowed, by how much is sprayed in it, and where the order turns. */
export type SeasonCurve = { names: string[]; rows: CurveRow[] };

/** The season's cost against the season's use. Refuses 'not-found'. */
export async function seasonCurve(
  { shop: id, recipe, product }: z.output<typeof SeasonCurveQuestion>,
  clock: Clock,
): Promise<Outcome<SeasonCurve>> {
  const here = await askedShop(id);
  if (!here.ok) return here;
  const { file, shop } = await snapshotOf(here.value.id);
  const asked = { id: here.value.id, file, today: clock.today(shop.zone) };
  const found = await equivalentsNow(asked, { recipe, product });
  if (!found) return refuse({ code: 'not-found', what: 'product', id: product });
  const curve = await curveOf(asked, found);
  const allowed = priceable(found);
  return accept({
    names: allowed.map((one) => one.product.name),
    rows: [...curve.map((point, at) => pointRow(found, curve, point, at)), ...turnRows(found)].sort(bySpray),
  });
}

/** The candidates that a season can be priced with, in their order. */
const priceable = ({ candidates }: Equivalents) => candidates.filter(({ season }) => season !== null);

/** The points of the curve, worked out once for a shop as it stands. */
export const curveOf = (asked: AskedOf, found: Equivalents): Promise<CurvePoint[]> => {
  const { recipe, ingredient } = found.wanted;
  const candidates = priceable(found).map(({ product }) => product.id);
  return curveNow(asked, { recipe: recipe.id, product: ingredient.product.id, candidates });
};

function figureIn(found: Equivalents, curve: CurvePoint[], ...path: (string | number)[]): Fig {
  const working = equivalentWorking(found, path.map(String), curve);
  if (!working) throw new RangeError(`season curve: nothing stands behind "${path.join('/')}"`);
  return { at: equivalentAddress(found, ...path), value: working.value };
}

/** One use. As it is planned, its costs are those that stand with the candidates. */
function pointRow(found: Equivalents, curve: CurvePoint[], { times }: CurvePoint, at: number): CurveRow {
  const isPlanned = compare(times, ONE) === 0;
  return {
    ...{ isPlanned, isTurn: false },
    spray: isPlanned ? figureIn(found, curve, 'sprayed') : figureIn(found, curve, 'use', at),
    costs: priceable(found).map(({ product: { id } }) =>
      isPlanned ? figureIn(found, curve, id, 'season') : figureIn(found, curve, id, 'at', at),
    ),
  };
}

const ONE = exact(1n);

/** Where the order turns, with what the season costs there with each of the two. */
const turnRows = (found: Equivalents): CurveRow[] =>
  found.breakEven.flips.map(({ between }, number) => ({
    ...{ isPlanned: false, isTurn: true },
    spray: figureIn(found, [], 'turn', number),
    costs: priceable(found).map(({ product }) =>
      between.includes(product) ? figureIn(found, [], 'turn', number, 'behind', product.id) : null,
    ),
  }));

const sprayIn = ({ spray: { value } }: CurveRow): number => (value.kind === 'volume' ? value.ml : 0);
const bySpray = (a: CurveRow, b: CurveRow): number => sprayIn(a) - sprayIn(b);
