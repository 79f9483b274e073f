import { plus } from '@/shared/quantity/amounts';
import { addDays, type Day } from '@/shared/time/day';
import type { Plan, Waste } from '../ahead/plan';
import { lastUsableDay } from '../ledger/last-usable-day';
import { amountOf, counted, dayNear } from '../rules/in-words';
import { type Alert, keyOf } from './alert';

/** So many days before its last usable day a bottle is told of. */
const DAYS_BEFORE = 7;

/**
 * Bottles that die with something in them, as the plan will have drawn from them by then.
 *
 * Looks at  what the plan leaves in each container on its last usable day
 * Fires     from a week before that day on, and after it as long as something is left. Once for a lot and day
 */
export function bottleAlerts(plan: Plan): Alert[] {
  const lots = new Map<string, Dying>();
  for (const waste of plan.products.flatMap(({ wastes }) => wastes)) {
    if (waste.amount === 0) continue;
    const lastDay = lastDayOf(waste);
    if (lastDay > addDays(plan.today, DAYS_BEFORE)) continue;
    // One that nothing was poured from yet dies by a plan that may change, and is the same matter all the while.
    const key = keyOf('bottle', waste.container.lot, lastUsableDay(waste.container) ?? '');
    const lot = lots.get(key);
    lots.set(
      key,
      lot ? { ...lot, amount: plus(lot.amount, waste.amount), count: lot.count + 1 } : first(waste, lastDay),
    );
  }
  return [...lots].map(([key, lot]) => ({
    ...{ key, kind: 'bottle', severity: lot.lastDay < plan.today ? 'warn' : 'note' },
    sentence: sentenceOf(plan, lot),
  }));
}

/** What dies together: containers of one lot. */
type Dying = Pick<Waste, 'container' | 'amount'> & { count: number; lastDay: Day };

const first = ({ container, amount }: Waste, lastDay: Day): Dying => ({ container, amount, count: 1, lastDay });

/** The last day it may be used: as it stands, or sooner when the plan opens it. */
function lastDayOf({ container, on }: Waste): Day {
  const before = addDays(on, -1);
  const standing = lastUsableDay(container);
  return standing !== null && standing < before ? standing : before;
}

function sentenceOf(plan: Plan, { container, amount, count, lastDay }: Dying): string {
  const { product, packText, receivedOn } = container;
  const what = `${product.name}, ${packText}, received ${dayNear(plan, receivedOn)}`;
  const bottles = count === 1 ? what : `${counted(count, 'container')} of ${what}`;
  const left = amountOf(plan, amount, product);
  return lastDay < plan.today
    ? `${bottles}: ${dayNear(plan, lastDay)} was the last usable day, and ${left} is left. Discard it and note that.`
    : `${bottles}: the last usable day is ${dayNear(plan, lastDay)}, and the plan leaves ${left} in it.`;
}
