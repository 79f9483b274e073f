import 'server-only';
import { cache } from 'react';
import { bookedIn } from '../data/booked';
import { type Budget, budgetOf } from '../engine/budget/budget';
import type { Figures } from '../engine/working/working';
import type { House } from './house';

/** The budget of the shop that is looked at. It reads everything that ever moved, so it is made only where it is asked for. */
export const budgetNow = cache(
  async ({ id, shop, today }: House): Promise<Budget> => budgetOf(shop, await bookedIn(id), today),
);

/** Whether a figure is one of the budget's, by its address. */
export const isOfBudget = (address: string): boolean => address.startsWith('budget/');

/** What a figure at an address is asked of: with the budget where it is one of the budget's. */
export const figuresFor = async (house: House, address: string): Promise<Figures> =>
  isOfBudget(address) ? { ...house, budget: await budgetNow(house) } : house;
