import { type Micros, plus } from '@/shared/quantity/amounts';
import { MONTHS } from '@/shared/time/civil';
import { showDay } from '@/shared/time/show-day';
import {
  BUDGET_COLUMNS,
  BUDGET_KEYS,
  type Budget,
  type BudgetColumn,
  type BudgetKey,
  linesIn,
  NONE,
  perPlant,
  unknownIn,
} from '../budget/budget';
import { type BudgetLine, type BudgetSum, budgetSum } from '../budget/budget-line';
import { sumOnce } from '../budget/placed-lines';
import { grouped } from '../grouped';
import { nameIn } from '../name-in';
import { eachOnce } from '../rules/to-enter';
import type { Bench, Program, Shop } from '../shop';
import { atLeast, entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

/**
 * The working of one figure of the budget: `KEY/ROW/COLUMN` of a row, `KEY/COLUMN` of all of them, such as
 * `month/2026-03/actual-product`; `KEY/ROW/unknown` or `KEY/unknown`, how much is not known; `unknown/SIDE/WHAT` of one
 * thing that is not; or `plant/BENCH/GROUP/COLUMN`, of what one plant costs, and `plant/BENCH/GROUP/all`.
 */
export function budgetWorking(budget: Budget, path: string[]): FoundWorking | null {
  const [key, row, last, column] = path;
  if (key === 'plant') return plantWorking(budget, row, Number(last), column);
  if (key === 'unknown') return unknownOfWorking(budget, row, path[2]);
  if (!isKey(key)) return null;
  if (path.length === 2 && row === 'unknown') return unknownWorking(budget, key, null);
  if (path.length === 3 && row !== undefined && last === 'unknown') return unknownWorking(budget, key, row);
  if (path.length === 2 && isColumn(row)) return sumWorking(budget, key, null, row);
  return row !== undefined && isColumn(last) ? sumWorking(budget, key, row, last) : null;
}

const isKey = (word: string | undefined): word is BudgetKey => BUDGET_KEYS.some((key) => key === word);
const isColumn = (word: string | undefined): word is BudgetColumn => BUDGET_COLUMNS.some((column) => column === word);

/** A row of the budget as people call it. */
export function rowName({ shop }: Budget, key: BudgetKey, row: string): string {
  if (key === 'month') return `${MONTHS[Number(row.slice(5)) - 1]} ${row.slice(0, 4)}`;
  if (row === NONE) return key === 'product' ? 'work, and mixes not told by product' : `of no ${key}`;
  if (key === 'bench') return nameIn(shop.benches, row);
  if (key === 'product') return nameIn(shop.products, row);
  const program = shop.programs.find(({ id }) => id === row);
  return program ? programName(shop, program) : row;
}

/** The recipes of a program; where another has the same ones, its benches too. */
function programName({ programs }: Shop, program: Program): string {
  const nameOf = ({ recipes }: Program) => recipes.map(({ name }) => name).join(', then ');
  const name = nameOf(program);
  const isAlone = programs.every((one) => one === program || nameOf(one) !== name);
  return isAlone ? name : `${name}, on ${program.benches.map((bench) => bench.name).join(', ')}`;
}

const COLUMN_NAMES: Record<BudgetColumn, string> = {
  'actual-product': 'Product that was used',
  'actual-waste': 'What was wasted',
  'actual-labour': 'Work that was done',
  'foreseen-product': 'What product was planned to cost',
  'foreseen-labour': 'What work was planned to cost',
  'planned-product': 'Product that is planned',
  'planned-waste': 'What will be wasted',
  'planned-labour': 'Work that is planned',
};

const RULES: Record<BudgetColumn, string> = {
  'actual-product':
    'What left the bottles, at what was paid for it: into mixes, drawn without a record, and missing at a count. A record that no bottle knows of counts with the cost it says itself.',
  'actual-waste':
    'What was thrown away, on that day, and what stands there past its last usable day, on the day after it.',
  'actual-labour': 'From the start of each spraying to its end, at the wage of today.',
  'foreseen-product':
    'What the records of sprayings say their product was to cost. Where none was noted it is not known.',
  'foreseen-labour': 'The minutes that the programs of sprayings on record give them, at the wage of today.',
  'planned-product':
    'What the sprayings that are planned take, from the bottles there are, and what is short at the cheapest offer.',
  'planned-waste': 'What is left in bottles after their last usable day, if nothing but the programs uses it.',
  'planned-labour': 'The minutes of each spraying that is planned, at the wage.',
};

const UNKNOWN = 'None of it is known.';
const SOME_UNKNOWN = 'Some of it is not known.';

const shownSum = ({ cost, unknown }: BudgetSum): Shown =>
  cost === null ? { kind: 'unknown', because: UNKNOWN } : { kind: 'money', micros: cost, ...atLeast(unknown) };

function sumWorking(budget: Budget, key: BudgetKey, row: string | null, column: BudgetColumn): FoundWorking {
  const lines = linesIn(budget, key, row, column);
  const sum = sumOnce(lines);
  const group = ({ on, what }: BudgetLine) => (key === 'month' && row !== null ? on : what);
  const split = key === 'bench' ? ' A spraying of several benches is split by the spray that each takes.' : '';
  const missing =
    sum.unknown === 0
      ? ''
      : ` ${sum.unknown} ${sum.unknown === 1 ? 'piece is' : 'pieces are'} not known, and not in the sum.`;
  return {
    title: `${COLUMN_NAMES[column]}${row === null ? '' : `, ${rowName(budget, key, row)}`}`,
    value: shownSum(sum),
    rule: `${RULES[column]}${split}${missing}`,
    get steps() {
      return byGroup(lines, group).map(([, of]) => groupStep(of, budget));
    },
    get toEnter() {
      return eachOnce(lines.flatMap(({ cost, toEnter = [] }) => (cost === null ? toEnter : [])));
    },
  };
}

function byGroup(lines: readonly BudgetLine[], nameOf: (line: BudgetLine) => string): [string, BudgetLine[]][] {
  const groups = grouped(lines, (line) => `${nameOf(line)} ${line.what}`);
  return [...groups].sort(([, [a]], [, [b]]) => (a && b && a.on < b.on ? -1 : 1));
}

function groupStep(lines: readonly BudgetLine[], budget: Budget): Step {
  const times = new Set(lines.map(({ piece }) => piece)).size;
  const sum = budgetSum(lines);
  const unknown = sum.unknown === 0 ? '' : `, ${sum.unknown} of them not known`;
  const when = `${daysOf(lines, budget)}, ${times} ${times === 1 ? 'time' : 'times'}`;
  return entered(lines[0]?.what ?? '', shownSum(sum), `${when}${unknown}`);
}

/** The first and the last day of some lines. */
function daysOf(lines: readonly BudgetLine[], { today }: Budget): string {
  const days = lines.map(({ on }) => on).sort();
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return '';
  return first === last ? showDay(first, today) : `${showDay(first, today)} to ${showDay(last, today)}`;
}

/** How many pieces of a row are not known, and what they are. */
function unknownWorking(budget: Budget, key: BudgetKey, row: string | null): FoundWorking {
  const lines = unknownIn(budget, key, row);
  return {
    title: `Not known${row === null ? '' : `, ${rowName(budget, key, row)}`}`,
    value: { kind: 'count', value: sumOnce(lines).unknown, of: 'pieces' },
    rule: 'Pieces of cost that nobody knows. They are in no sum, and count as nothing nowhere. A spraying of several benches is one piece.',
    get steps() {
      return byGroup(lines, ({ side, what }) => `${side} ${what}`).map(([, of]) => unknownStep(of, budget, row));
    },
  };
}

const SIDES: Record<BudgetLine['side'], string> = { actual: 'spent', foreseen: 'was planned', planned: 'planned' };

/** In which sense a side of the budget is meant, in a word or two. */
export const sideWords = (side: BudgetLine['side']): string => SIDES[side];

/** One thing that is not known: of all rows it opens to each time, of one row its days are told. */
function unknownStep(lines: readonly BudgetLine[], budget: Budget, row: string | null): Step {
  const { side = 'actual', what = '' } = lines[0] ?? {};
  const value: Shown = { kind: 'count', value: budgetSum(lines).unknown, of: 'times' };
  const from = `${SIDES[side]}, ${daysOf(lines, budget)}`;
  if (row !== null) return entered(what, value, from);
  return worked(what, value, from, figureAddress('budget', 'unknown', side, what));
}

const unknowns = new WeakMap<Budget, Map<string, BudgetLine[]>>();

/** The lines that nobody knows the cost of, by what they are. */
function unknownsOf(budget: Budget): Map<string, BudgetLine[]> {
  const found =
    unknowns.get(budget) ?? grouped(unknownIn(budget, 'month', null), ({ side, what }) => `${side} ${what}`);
  unknowns.set(budget, found);
  return found;
}

/** One thing that is not known, day by day. */
function unknownOfWorking(budget: Budget, side: string | undefined, what: string | undefined): FoundWorking | null {
  const lines = unknownsOf(budget).get(`${side} ${what}`);
  if (!lines) return null;
  const pieces = byGroup(lines, ({ piece }) => piece);
  return {
    title: `${what}: not known`,
    value: { kind: 'count', value: pieces.length, of: 'times' },
    rule: 'Each time that nobody knows what it cost, or will cost. A product’s price, a dose or a wage that is missing is entered once, and all of these are known.',
    steps: pieces.map(([, of]) =>
      entered(
        daysOf(of, budget),
        { kind: 'unknown', because: UNKNOWN },
        of.map(({ bench }) => bench?.name ?? 'no bench').join(', '),
      ),
    ),
  };
}

function plantWorking(
  budget: Budget,
  id: string | undefined,
  place: number,
  column: string | undefined,
): FoundWorking | null {
  const bench = budget.shop.benches.find((one) => one.id === id);
  const group = bench?.plants[place];
  if (bench && group && column === 'all') return plantInAll(budget, bench, place);
  if (!bench || !group || !isColumn(column)) return null;
  const share = perPlant(budget, bench, column)?.[place] ?? null;
  const all = sumWorking(budget, 'bench', bench.id, column).value;
  return {
    title: `${COLUMN_NAMES[column]}, for one of the ${group.name} on ${bench.name}`,
    value:
      share?.each == null
        ? {
            kind: 'unknown',
            because: group.count === 0 ? 'There are no plants in this group.' : SOME_UNKNOWN,
          }
        : { kind: 'money', micros: share.each },
    rule: 'What the bench costs, shared over its plants by the spray they take (count × mL for one plant), ÷ the plants of the group. To the nearest micro.',
    steps: [
      worked('The bench', all, 'its lines', figureAddress('budget', 'bench', bench.id, column)),
      ...(share ? [entered('Of it for the group', { kind: 'money', micros: share.cost }, 'by spray')] : []),
      entered('Plants', { kind: 'count', value: group.count, of: 'plants' }, bench.name),
    ],
  };
}

/** What one plant costs in product and in work. */
function plantInAll(budget: Budget, bench: Bench, place: number): FoundWorking {
  const of = (column: 'planned-product' | 'planned-labour') => perPlant(budget, bench, column)?.[place]?.each ?? null;
  const [product, labour] = [of('planned-product'), of('planned-labour')];
  const step = (label: string, each: Micros | null, column: BudgetColumn) =>
    worked(
      label,
      money(each, SOME_UNKNOWN),
      'for one plant',
      figureAddress('budget', 'plant', bench.id, place, column),
    );
  return {
    title: `Product and work for one of the ${bench.plants[place]?.name} on ${bench.name}`,
    value: money(product === null || labour === null ? null : plus(product, labour), SOME_UNKNOWN),
    rule: 'What one plant costs in product in the year ahead + what it costs in work. What dies in bottles belongs to no bench, and freight to no spraying: both are in neither.',
    steps: [step('Product', product, 'planned-product'), step('Work', labour, 'planned-labour')],
  };
}
