import type { Instant } from '@/shared/time/instant';
import type { Plan } from '../ahead/plan';
import type { Budget } from '../budget/budget';
import type { BenchState } from '../keepout/keep-out';
import { benchWorking } from './bench-figures';
import { budgetWorking } from './budget-figures';
import { containerWorking } from './container-figures';
import { mixWorking } from './mix-figures';
import { offerWorking } from './offer-figures';
import { leadWorking } from './on-order-figures';
import { orderWorking } from './order-figures';
import { productWorking } from './product-figures';
import { recipeWorking } from './recipe-figures';
import { shelfWorking } from './replace-figures';
import { shelfValueWorking } from './shelf-figures';
import { type FoundWorking, readAddress, type Shown, type Working } from './shown';
import { sprayingWorking } from './spraying-figures';
import { storeWorking } from './store-figures';
import { dayWorking, totalWorking } from './sum-figures';
import { swapWorking } from './swap-figures';
import { whatIfWorking } from './what-if-figures';

export type { Shown, Working } from './shown';

/** What a figure may be asked of: the plan, who may stand where now, and where anybody asks of it, the budget. */
export type Figures = { plan: Plan; benches: BenchState[]; now: Instant; budget?: Budget };

/**
 * How any figure on any page was reached.
 *
 * Takes  the figures of one moment, and the address of one of them, such as `spraying/PROGRAM/DATE/materialCost`
 * Gives  null when there is no such figure
 */
export function workingOf(figures: Figures, address: string): Working | null {
  const path = readAddress(address);
  const working = path && findWorking(figures, path);
  return working && { figure: address, ...working };
}

/** The value of a figure alone. Many figures are shown for each one that is opened, so the inputs of none are listed here. */
export function valueAt(figures: Figures, address: string): Shown | null {
  const path = readAddress(address);
  return (path && findWorking(figures, path))?.value ?? null;
}

function findWorking(figures: Figures, [subject, ...path]: string[]): FoundWorking | null {
  const { plan, benches, now, budget } = figures;
  switch (subject) {
    case 'what-if':
      return whatIfWorking(plan, path, (supposed, figure) => findWorking({ ...figures, plan: supposed }, figure));
    case 'spraying':
      return sprayingWorking(plan, path);
    case 'product':
      return productWorking(plan, path);
    case 'container':
      return containerWorking(plan, path);
    case 'offer':
      return offerWorking(plan, path);
    case 'order':
      return orderWorking(plan, path);
    case 'supplier':
      return leadWorking(plan, path);
    case 'recipe':
      return recipeWorking(plan.shop, path);
    case 'mix':
      return mixWorking(plan.shop, now, path);
    case 'bench':
      return benchWorking(plan.shop, benches, now, path);
    case 'day':
      return dayWorking(plan, path);
    case 'shelf':
      return shelfValueWorking(plan, path) ?? shelfWorking(plan, path);
    case 'store':
      return storeWorking(plan, path);
    case 'use-up':
      return swapWorking(plan, path);
    case 'budget':
      return budget ? budgetWorking(budget, path) : null;
    case 'totals':
      return totalWorking(plan, path);
    default:
      return null;
  }
}
