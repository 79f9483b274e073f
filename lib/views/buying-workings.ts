import 'server-only';
import { PLAN_WEEKS } from '@/shared/forms/purchase-plan';
import { candidatesFor, wantedIn } from '../engine/equivalents/candidate';
import { pricedByUnit } from '../engine/equivalents/equivalents';
import { buyingWorking } from '../engine/working/buying-figures';
import { equivalentWorking, unitWorking } from '../engine/working/equivalent-figures';
import { type FoundWorking, readAddress, type Working } from '../engine/working/shown';
import { equivalentsNow } from './equivalents-now';
import type { HereNow } from './house';
import { planShown } from './purchase-plan';
import { curveOf } from './season-curve';
import { switchAheadWorking } from './switch-ahead';

type Here = Pick<HereNow, 'id' | 'file' | 'shop' | 'today'>;

/** Whether a figure is one that a search gives, by its address: of a purchase plan, or of what could stand in a recipe. */
export const isOfSearch = (address: string): boolean => /^(buying|equivalent)\//.test(address);

/** How a figure was reached that a search gives; null when there is none. */
export async function searchedWorking(here: Here, address: string): Promise<Working | null> {
  const [subject, ...path] = readAddress(address) ?? [];
  const working = subject === 'buying' ? await ofPlan(here, path) : await ofEquivalents(here, path);
  return working && { figure: address, ...working };
}

async function ofPlan(here: Here, [weeks = '', ...path]: string[]): Promise<FoundWorking | null> {
  if (!PLAN_WEEKS.some((each) => String(each) === weeks)) return null;
  return buyingWorking(await planShown(here, Number(weeks)), path);
}

async function ofEquivalents(here: Here, [recipe = '', product = '', ...path]: string[]): Promise<FoundWorking | null> {
  const [candidate = '', figure, ...rest] = path;
  const unit = ofUnit(here, { recipe, product, candidate, figure });
  if (unit) return unit;
  const found = await equivalentsNow(here, { recipe, product });
  if (!found) return null;
  if (figure === 'switch') return switchAheadWorking(here, found, candidate, rest);
  const ofCurve = candidate === 'use' || figure === 'at';
  return equivalentWorking(found, path, ofCurve ? await curveOf(here, found) : []);
}

type UnitAsked = { recipe: string; product: string; candidate: string; figure: string | undefined };

/** What needs no season, and so no search: the dose of a candidate, and what a gram or a litre of it costs. */
function ofUnit({ shop }: Here, asked: UnitAsked): FoundWorking | null {
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  const product = shop.products.find(({ id }) => id === asked.product);
  const wanted = recipe && product ? wantedIn(shop, recipe, product) : null;
  const stands = wanted && candidatesFor(shop, wanted).find((one) => one.product.id === asked.candidate);
  return stands ? unitWorking({ wanted, shop }, pricedByUnit(shop, wanted, stands), asked.figure) : null;
}
