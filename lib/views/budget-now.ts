import 'server-only';
import type { Day } from '@/shared/time/day';
import { bookedIn } from '../data/booked';
import { keptHere } from '../data/kept';
import { type Budget, budgetOf } from '../engine/budget/budget';
import type { Shop } from '../engine/shop';
import type { Figures } from '../engine/working/working';
import type { House } from './house';

type KeptBudget = { shop: Shop; today: Day; budget: Promise<Budget> };

/** A budget of years of movements is large, so few are kept. */
const budgets = keptHere<KeptBudget>('budgets', { things: 2 });

/**
 * The budget of a shop as it stands, worked out once for it. It reads everything that ever moved, so it is made only where
 * it is asked for.
 */
export function budgetNow({ id, shop, today }: Pick<House, 'id' | 'shop' | 'today'>): Promise<Budget> {
  const kept = budgets.get(id);
  if (kept?.shop === shop && kept.today === today) return kept.budget;
  const budget = bookedIn(id).then((booked) => budgetOf(shop, booked, today));
  budgets.set(id, { shop, today, budget });
  budget.catch(() => budgets.delete(id));
  return budget;
}

/** Whether a figure is one of the budget's, by its address. */
export const isOfBudget = (address: string): boolean => address.startsWith('budget/');

/** What a figure at an address is asked of: with the budget where it is one of the budget's. */
export const figuresFor = async (house: House, address: string): Promise<Figures> =>
  isOfBudget(address) ? { ...house, budget: await budgetNow(house) } : house;
