import 'server-only';
import { PLAN_WEEKS } from '@/shared/forms/purchase-plan';
import { buyingWorking } from '../engine/working/buying-figures';
import { equivalentWorking } from '../engine/working/equivalent-figures';
import { type FoundWorking, readAddress, type Working } from '../engine/working/shown';
import { equivalentsNow } from './equivalents-now';
import type { HereNow } from './house';
import { planShown } from './purchase-plan';

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
  const found = await equivalentsNow(here, { recipe, product });
  return found && equivalentWorking(found, path);
}
