import 'server-only';
import { z } from 'zod';
import type { Clock } from '../clock';
import { BUDGET_KEYS } from '../engine/budget/budget';
import { type BudgetScreen, budgetSeen } from './budget-seen';
import { houseNow } from './house';

/** By what an address asks the budget to be put together. */
export const BudgetQuery = z.object({ by: z.enum(BUDGET_KEYS).catch('month') });

/** The budget of the shop that is looked at. Null when there is none. */
export async function budgetScreen(clock: Clock, asked: unknown): Promise<BudgetScreen | null> {
  const house = await houseNow(clock);
  return house && budgetSeen(house, BudgetQuery.parse(asked).by);
}
