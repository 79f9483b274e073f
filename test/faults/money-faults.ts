import { type Fault, inFile } from './fault';

export const COSTS: Fault[] = [
  ...inFile('lib/engine/ledger/draw-cost.ts', [
    'cost of a draw',
    'ofEach<Micros, Stock>(paid, before, size)',
    'ofEach<Micros, Stock>(paid, minus(before, before), size)',
  ]),
  ...inFile('lib/engine/ledger/account.ts', [
    'what is left of a price',
    'left: costOut(paid, size, gone, size)',
    'left: costOut(paid, size, minus(size, size), size)',
  ]),
  ...inFile(
    'lib/engine/ledger/draw-order.ts',
    ['first expiring first', 'a.lastDay < b.lastDay ? -1 : 1', 'a.lastDay < b.lastDay ? 1 : -1'],
    ['then what is open', 'a.opened ? -1 : 1', 'a.opened ? 1 : -1'],
    ['then what came first', 'a.received - b.received', 'b.received - a.received'],
  ),
  ...inFile(
    'lib/engine/ledger/last-usable-day.ts',
    ['opened life', 'addDays(openedOn, openedDays)', 'addDays(openedOn, openedDays + 1)'],
    ['unopened life', 'addDays(container.receivedOn, unopenedDays)', 'addDays(container.receivedOn, unopenedDays - 1)'],
    [
      'the earlier of both',
      'dayNumber(shut) < dayNumber(opened) ? shut : opened',
      'dayNumber(shut) < dayNumber(opened) ? opened : shut',
    ],
  ),
  ...inFile(
    'lib/engine/ahead/stock-walk.ts',
    ['waste the day after', 'Math.max(lastDay + 1, received, start)', 'Math.max(lastDay, received, start)'],
    ['cost of waste', 'cost: costOf(container, out, plus(out, left))', 'cost: costOf(container, NONE, left)'],
    ['usable stock', 'here.filter(({ lastDay }) => lastDay >= today)', 'here.filter(({ lastDay }) => lastDay >= 0)'],
    ['the day it runs out', 'if (line.short > 0) walk.runsOutOn ??=', 'if (line.short > 0) walk.runsOutOn ='],
    ['what is left of a week', 'plus(week.used, week.wasted)', 'week.used'],
    [
      'life of what is opened on the way',
      'from.lastDay = Math.min(from.lastDay, day +',
      'from.lastDay = Math.max(from.lastDay, day +',
    ],
  ),
  ...inFile(
    'lib/engine/ahead/cheapest-offer.ts',
    ['price per unit', 'divide(exact(offer.price), offer.pack)', 'exact(offer.price)'],
    ['what is short, in money', 'over: BigInt(amount) * over, under', 'over: BigInt(amount), under'],
  ),
  ...inFile(
    'lib/engine/ahead/reorder.ts',
    ['order by', 'addDays(runsOutOn, -safetyDays)', 'runsOutOn'],
    ['weeks until reorder', 'wholeWeeks(daysBetween(today, by))', 'wholeWeeks(daysBetween(today, neededOn))'],
  ),
  ...inFile('shared/quantity/rounding.ts', ['weeks rounded down', 'Math.floor(days / 7)', 'Math.ceil(days / 7)']),
  ...inFile(
    'shared/time/working-days.ts',
    ['holidays', ' && !closed.has(number)', ''],
    [
      'working days of a lead time',
      'let left = leadDays - weeks * week.perWeek; left > 0',
      'let left = leadDays - weeks * week.perWeek; left > 1',
    ],
    ['whole weeks of a lead time', 'from + direction * 7 * weeks', 'from + direction * 6 * weeks'],
  ),
  ...inFile('lib/engine/ahead/plan-document.ts', [
    'cost per plant and litre of a plan',
    'divide(exact(BigInt(cost)), over)',
    'exact(BigInt(cost))',
  ]),
  ...inFile(
    'lib/engine/mix/mix-sheet.ts',
    [
      'cost per plant and litre',
      'wholeNearest<Micros>(divide(exact(cost), over))',
      'wholeNearest<Micros>(exact(cost))',
    ],
    ['labour of a mix', 'const SIXTY = exact(60n)', 'const SIXTY = exact(100n)'],
  ),
  ...inFile('shared/mix/work-minutes.ts', [
    'minutes of work',
    'multiply(exact(minutesPerPlant), exact(plants))',
    'exact(minutesPerPlant)',
  ]),
  ...inFile('lib/engine/budget/over-benches.ts', [
    'cost over benches',
    'multiply(multiply(exact(count), exact(mlPerPlant)), exact(coverage * 1000))',
    'multiply(exact(count), exact(coverage * 1000))',
  ]),
];

export const BUYING: Fault[] = [
  ...inFile('lib/engine/ahead/price-in-force.ts', [
    'the price in force',
    'since === null || since <= day',
    'since === null || since < day',
  ]),
  ...inFile('shared/measure/price-break.ts', ['quantity breaks', 'atLeast <= packs', 'atLeast < packs']),
  ...inFile(
    'shared/measure/order-sums.ts',
    ['free freight', 'goods >= freeFreightOver', 'goods > freeFreightOver'],
    ['what an order comes to', 'plus(goods, freight);\n  return', 'goods;\n  return'],
  ),
  ...inFile(
    'lib/engine/buying/pack-use.ts',
    ['days in a year of capital', 'DAYS_PER_YEAR = 365', 'DAYS_PER_YEAR = 360'],
    ['how far a pack reaches', 'const full = opened.covered + pack.size', 'const full = pack.size'],
    ['a pack dies once opened', 'day + pack.openedDays)', 'day + 9_999)'],
    [
      'what is left of the last pack',
      'use.left * horizon.days <= need.whole * keeps',
      'use.left * horizon.days > need.whole * keeps',
    ],
  ),
  ...inFile('lib/engine/buying/orders.ts', ['total of a plan', 'total + (freight ?? 0)', 'total']),
  ...inFile(
    'lib/engine/buying/bought.ts',
    ['goods and capital, less what is left', 'goods + capital - left;', 'goods + capital;'],
    ['waste inside the packs', 'price - ofEach<number, number>(price, pack.size - use.left, pack.size)', 'price'],
  ),
  ...inFile('lib/engine/ahead/replace-cost.ts', [
    'whole packs to replace the shelf',
    'Math.max(1, wholeUp(divide(needed, offer.pack)))',
    '1',
  ]),
  ...inFile(
    'lib/engine/equivalents/equivalents.ts',
    ['cost per gram', 'divide(multiply(price, THOUSAND), strength)', 'multiply(price, THOUSAND)'],
    ['cost per litre', 'multiply(price, multiply(dose.dose, THOUSAND))', 'multiply(price, dose.dose)'],
    ['the cheapest season decides', 'best.season.total <= one.season.total', 'best.season.total >= one.season.total'],
  ),
  ...inFile('lib/engine/equivalents/break-even.ts', [
    'break-even',
    'return (a ?? 0) >= (b ?? 0)',
    'return (a ?? 0) <= (b ?? 0)',
  ]),
];
