import type { TodayScreen } from '@/lib/views/today';

/** The day in one line: what to mix, where to keep out, what is to order, what comes. */
export function summaryOf({ toMix, benches, orders, coming }: TodayScreen): string {
  const comes = coming.filter(({ due }) => due === 'today').length;
  const shut = benches.filter(({ state }) => state !== 'open').length;
  const pressing = orders.filter((line) => line.runsOut && isPressing(line) && !isOnItsWay(line)).length;
  const unknown = orders.filter(({ runsOut }) => !runsOut).length;
  return [
    toMix.length === 0 ? 'Nothing to spray' : counted(toMix.length, 'mix to spray', 'mixes to spray'),
    shut === 0 ? 'no bench is closed now' : counted(shut, 'bench to keep out of now', 'benches to keep out of now'),
    pressing > 0 && counted(pressing, 'product to order this week', 'products to order this week'),
    unknown > 0 && counted(unknown, 'need not known', 'needs not known'),
    comes > 0 && counted(comes, 'delivery expected today', 'deliveries expected today'),
  ]
    .filter(Boolean)
    .join(' · ');
}

const isPressing = ({ order }: TodayScreen['orders'][number]): boolean => order === null || order.weeks <= 0;

/** Whether enough of it is on its way, as far as anybody knows. */
const isOnItsWay = ({ onOrder }: TodayScreen['orders'][number]): boolean =>
  onOrder !== null && !onOrder.isLate && onOrder.stillRunsOutOn === null;

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
