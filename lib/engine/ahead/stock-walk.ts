import { least, type Micros, minus, plus, type Stock, stock, sum } from '@/shared/quantity/amounts';
import { wholeWeeks } from '@/shared/quantity/rounding';
import { addDays, type Day, dayFromNumber, dayNumber } from '@/shared/time/day';
import { costOut } from '../ledger/draw-cost';
import { drawnBefore, type Turn, turnOf } from '../ledger/draw-order';
import type { Container } from '../shop';
import type { Draw, IngredientLine, StockWeek, Waste } from './plan';

/** One line of one spraying that asks for a product on a day. */
export type Demand = { day: number; line: IngredientLine };

/** A container on the walk: whose turn it is, what is left in it, and what has left it. */
type Standing = Turn & {
  container: Container;
  left: Stock;
  /** What has left the container, ever: the cumulative amount that its price is spread over. */
  out: Stock;
};

/** What one product's walk gives, beside the draws that it writes into the lines. */
export type Walk = {
  onHand: Stock;
  usable: Stock;
  weeks: StockWeek[];
  wastes: Waste[];
  runsOutOn: Day | null;
  unknownSince: Day | null;
};

const NONE = stock(0);

/**
 * Walk a product's stock through the days of the horizon: each demand draws containers in order of their last usable
 * day, and what is left in a container after that day becomes waste on the following one.
 *
 *   closing = opening + received − used − wasted, in every week
 *
 * Takes   the product's containers, its demands in the order they happen, the first day and the number of weeks
 * Gives   the weeks, and writes draws and shortages into the demands' lines. A demand of an unknown amount draws nothing
 *         and makes the need of its week unknown
 * Units   µL of a liquid, mg of a powder
 */
export function walkStock(containers: Container[], demands: Demand[], today: Day, weeks: number): Walk {
  const start = dayNumber(today);
  const end = start + 7 * weeks - 1;
  const standing = containers.map(standUp);
  const walk: Walk = {
    ...countNow(standing, start),
    weeks: emptyWeeks(today, weeks),
    ...{ wastes: [], runsOutOn: null, unknownSince: null },
  };
  const weekOf = (day: number): StockWeek => at(walk.weeks, wholeWeeks(day - start));

  for (const { received, left } of standing) {
    if (received > start && received <= end) add(weekOf(received), 'received', left);
  }
  for (const { day, line } of demands) {
    const week = weekOf(day);
    if (line.amount === null) {
      week.need = null;
      walk.unknownSince ??= dayFromNumber(day);
      continue;
    }
    line.short = meet(standing, day, line, line.amount);
    add(week, 'needAtLeast', line.amount);
    add(week, 'used', minus(line.amount, line.short));
    add(week, 'short', line.short);
    if (line.short > 0) walk.runsOutOn ??= dayFromNumber(day);
  }
  walk.wastes = wastesOf(standing, start, end);
  for (const waste of walk.wastes) add(weekOf(dayNumber(waste.on)), 'wasted', waste.amount);
  closeWeeks(walk.weeks, walk.onHand);
  return walk;
}

const standUp = (container: Container): Standing => ({
  ...turnOf(container),
  container,
  left: container.remaining,
  out: minus(container.size, container.remaining),
});

function countNow(standing: Standing[], today: number) {
  const here = standing.filter(({ received }) => received <= today);
  const usable = here.filter(({ lastDay }) => lastDay >= today);
  return { onHand: sum(here.map(({ left }) => left)), usable: sum(usable.map(({ left }) => left)) };
}

const emptyWeeks = (today: Day, weeks: number): StockWeek[] =>
  Array.from({ length: weeks }, (_, week) => ({
    week: addDays(today, 7 * week),
    opening: NONE,
    need: NONE,
    needAtLeast: NONE,
    used: NONE,
    short: NONE,
    wasted: NONE,
    received: NONE,
    closing: NONE,
  }));

/** Draw what there is for one line, container after container. Gives what could not be met. */
function meet(standing: Standing[], day: number, line: IngredientLine, amount: Stock): Stock {
  let wanted = amount;
  while (wanted > 0) {
    const from = nextToDraw(standing, day);
    if (!from) break;
    const taken = least(wanted, from.left);
    line.draws.push(drawFrom(from, taken, day));
    wanted = minus(wanted, taken);
  }
  return wanted;
}

function nextToDraw(standing: Standing[], day: number): Standing | null {
  let next: Standing | null = null;
  for (const one of standing) {
    if (one.left === 0 || one.received > day || one.lastDay < day) continue;
    if (!next || drawnBefore(one, next) < 0) next = one;
  }
  return next;
}

function drawFrom(from: Standing, amount: Stock, day: number): Draw {
  const { container } = from;
  if (!from.opened) {
    from.opened = true;
    from.lastDay = Math.min(from.lastDay, day + (container.product.shelfLife.openedDays ?? Number.POSITIVE_INFINITY));
  }
  const before = from.out;
  const after = plus(before, amount);
  from.out = after;
  from.left = minus(from.left, amount);
  return { container, amount, before, after, cost: costOf(container, before, after) };
}

const costOf = ({ paid, size }: Container, before: Stock, after: Stock): Micros | null =>
  paid === null ? null : costOut(paid, size, before, after);

/** What is left in a container the day after its last one. Nothing draws from it later, so this can wait for the end. */
function wastesOf(standing: Standing[], start: number, end: number): Waste[] {
  const wastes: Waste[] = [];
  for (const { container, left, out, lastDay, received } of standing) {
    const on = Math.max(lastDay + 1, received, start);
    if (left === 0 || on > end) continue;
    wastes.push({ container, on: dayFromNumber(on), amount: left, cost: costOf(container, out, plus(out, left)) });
  }
  return wastes.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

function closeWeeks(weeks: StockWeek[], onHand: Stock): void {
  let left = onHand;
  for (const week of weeks) {
    week.opening = left;
    left = minus(plus(left, week.received), plus(week.used, week.wasted));
    week.closing = left;
    if (week.need !== null) week.need = week.needAtLeast;
  }
}

function add(week: StockWeek, column: 'needAtLeast' | 'used' | 'short' | 'wasted' | 'received', amount: Stock): void {
  week[column] = plus(week[column], amount);
}

function at<T>(list: T[], index: number): T {
  const found = list[index];
  if (found === undefined) throw new RangeError(`stock walk: nothing at ${index}`);
  return found;
}
