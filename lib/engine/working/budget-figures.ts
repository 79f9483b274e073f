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
} from '../budget/budget';
import { type BudgetLine, type BudgetSum, budgetSum } from '../budget/budget-line';
import { nameIn } from '../name-in';
import type { Program, Shop } from '../shop';
import { entered, type FoundWorking, figureAddress, type Shown, type Step, worked } from './shown';

/**
 * The working of one figure of the budget: `KEY/ROW/COLUMN` of a row, `KEY/COLUMN` of all of them, such as
 * `month/2026-03/actual-product`; or `plant/BENCH/GROUP/COLUMN`, of what one plant costs.
 */
export function budgetWorking(budget: Budget, path: string[]): FoundWorking | null {
  const [key, row, last, column] = path;
  if (key === 'plant') return plantWorking(budget, row, Number(last), column);
  if (!isKey(key)) return null;
  if (path.length === 2 && isColumn(row)) return sumWorking(budget, key, null, row);
  return row !== undefined && isColumn(last) ? sumWorking(budget, key, row, last) : null;
}

const isKey = (word: string | undefined): word is BudgetKey => BUDGET_KEYS.some((key) => key === word);
const isColumn = (word: string | undefined): word is BudgetColumn => BUDGET_COLUMNS.some((column) => column === word);

/** A row of the budget as people call it. */
export function rowName({ shop }: Budget, key: BudgetKey, row: string): string {
  if (key === 'month') return `${MONTHS[Number(row.slice(5)) - 1]} ${row.slice(0, 4)}`;
  if (row === NONE) return `of no ${key}`;
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
  'planned-product':
    'What the sprayings that are planned take, from the bottles there are, and what is short at the cheapest offer. In months that are past, what their records say was planned.',
  'planned-waste': 'What is left in bottles after their last usable day, if nothing but the programs uses it.',
  'planned-labour': 'The minutes of each spraying that is planned, at the wage.',
};

const UNKNOWN = 'None of it is known.';

const shownSum = ({ cost }: BudgetSum): Shown =>
  cost === null ? { kind: 'unknown', because: UNKNOWN } : { kind: 'money', micros: cost };

function sumWorking(budget: Budget, key: BudgetKey, row: string | null, column: BudgetColumn): FoundWorking {
  const lines = linesIn(budget, key, row, column);
  const sum = budgetSum(lines);
  const groups = key === 'month' && row !== null ? byGroup(lines, ({ on }) => on) : byGroup(lines, ({ what }) => what);
  const split = key === 'bench' ? ' A spraying of several benches is split by the spray that each takes.' : '';
  const missing =
    sum.unknown === 0
      ? ''
      : ` ${sum.unknown} ${sum.unknown === 1 ? 'piece is' : 'pieces are'} not known, and not in the sum.`;
  return {
    title: `${COLUMN_NAMES[column]}${row === null ? '' : `, ${rowName(budget, key, row)}`}`,
    value: shownSum(sum),
    rule: `${RULES[column]}${split}${missing}`,
    steps: groups.map(([, of]) => groupStep(of, budget)),
  };
}

function byGroup(lines: readonly BudgetLine[], nameOf: (line: BudgetLine) => string): [string, BudgetLine[]][] {
  const groups = new Map<string, BudgetLine[]>();
  for (const line of lines) {
    const name = `${nameOf(line)} ${line.what}`;
    const group = groups.get(name);
    if (group) group.push(line);
    else groups.set(name, [line]);
  }
  return [...groups].sort(([, [a]], [, [b]]) => (a && b && a.on < b.on ? -1 : 1));
}

function groupStep(lines: readonly BudgetLine[], { today }: Budget): Step {
  const [first] = lines;
  const last = lines.at(-1);
  const times = new Set(lines.map(({ piece }) => piece)).size;
  const sum = budgetSum(lines);
  const days =
    first && last && first.on !== last.on
      ? `${showDay(first.on, today)} to ${showDay(last.on, today)}`
      : first
        ? showDay(first.on, today)
        : '';
  const unknown = sum.unknown === 0 ? '' : `, ${sum.unknown} of them not known`;
  return entered(first?.what ?? '', shownSum(sum), `${days}, ${times} ${times === 1 ? 'time' : 'times'}${unknown}`);
}

function plantWorking(
  budget: Budget,
  id: string | undefined,
  place: number,
  column: string | undefined,
): FoundWorking | null {
  const bench = budget.shop.benches.find((one) => one.id === id);
  const group = bench?.plants[place];
  if (!bench || !group || !isColumn(column)) return null;
  const share = perPlant(budget, bench, column)?.[place] ?? null;
  const all = sumWorking(budget, 'bench', bench.id, column).value;
  return {
    title: `${COLUMN_NAMES[column]}, for one of the ${group.name} on ${bench.name}`,
    value:
      share?.each == null
        ? {
            kind: 'unknown',
            because: group.count === 0 ? 'There are no plants in this group.' : 'Some of it is not known.',
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
