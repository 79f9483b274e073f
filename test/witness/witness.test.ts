import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { readDay } from '@/shared/time/day';
import { runs } from '../runs';
import { anyShop } from './any-shop';
import { witnessPlan } from './plan';

/*
 * The program's plan beside a second one, which was written from the definitions alone and shares no code with it: whole
 * shops made up, and every figure equal to the micro, the µL, the day and the minute.
 */

/** The flags that the definitions tell of; the program raises others beside them. */
const RULES = new Set([
  'dose-outside-label',
  'too-many-applications',
  'too-soon',
  'mode-repeated',
  'must-not-mix',
  'ph-outside-range',
  'lot-expired',
  'bench-closed',
  'closed-in-opening-hours',
  'rei-unknown',
  'short',
  'unknown-cost',
  'unknown-expiry',
  'unknown-need',
]);

type Flag = { severity: string; rule: string; on: string; program: string | null };

/** Which rules fire on which day in which program, each once: what a flag names beside that is the program's own. */
const flagLines = (flags: Flag[]): string[] => {
  const lines = flags
    .filter(({ rule }) => RULES.has(rule))
    .map(({ severity, rule, on, program }) => `${on} ${severity} ${rule} ${program ?? ''}`);
  return [...new Set(lines)].sort();
};

/** A plan as JSON writes it, without what it takes for granted, which stands beside the figures. */
const comparable = (plan: { flags: Flag[] }): unknown => {
  const text = JSON.stringify(plan, (key, value) => (key === 'assumed' ? undefined : value));
  return { ...JSON.parse(text), flags: flagLines(plan.flags) };
};

function readShop(seed: number) {
  const { file, today, weeks } = anyShop(seed);
  const parsed = parseShopFile(JSON.stringify(file));
  const day = readDay(today);
  if (!parsed.ok || !day.ok) throw new Error(`The shop made from ${seed} was refused: ${JSON.stringify(parsed)}`);
  return { file: parsed.file, today: day.value, weeks };
}

test('the plan of a shop is what a second reading of the definitions makes of it', { timeout: 1_800_000 }, () => {
  for (let seed = 1; seed <= runs(60, 1000); seed++) {
    const { file, today, weeks } = readShop(seed);
    const ours = planDocument(planAhead(shopOfFile(file), today, weeks));
    const plain: ShopFile = JSON.parse(JSON.stringify(file));
    expect(comparable(ours), `the shop made from ${seed}`).toEqual(comparable(witnessPlan(plain, today, weeks)));
  }
});

test('the shops made up hold whatever a plan can meet', () => {
  const met = new Set<string>();
  for (let seed = 1; seed <= 40; seed++) {
    const { file, today, weeks } = readShop(seed);
    const { sprayings, products, flags } = witnessPlan(file, today, weeks);
    for (const { rule } of flags) met.add(rule);
    for (const { sprayMl, ingredients, labourCost } of sprayings) {
      if (sprayMl === null) met.add('unknown spray');
      if (labourCost === null) met.add('unknown wage');
      if (sprayMl !== null && ingredients.some(({ amount }) => amount === null)) met.add('unknown amount');
    }
    if (new Set(sprayings.map(({ startsAt }) => startsAt.slice(-6))).size > 1) met.add('clock change');
    for (const { weeks: rows, wasteCost, orderBy } of products) {
      if (rows.some(({ wasted }) => wasted > 0)) met.add('waste');
      if (rows.some(({ received }) => received > 0)) met.add('received');
      if (rows.some(({ used, short: lacking }) => used > 0 && lacking > 0)) met.add('partly short');
      if (wasteCost === null) met.add('unknown cost of waste');
      if (orderBy !== null) met.add('order by');
    }
    for (const { kind } of file.programs.flatMap(({ changes }) => changes)) met.add(kind);
  }
  const all = [...RULES, 'unknown spray', 'unknown wage', 'unknown amount', 'clock change', 'waste', 'received'];
  const more = ['partly short', 'unknown cost of waste', 'order by', 'skipped', 'moved', 'done'];
  expect([...all, ...more].filter((one) => !met.has(one))).toEqual([]);
});

test('the witness imports nothing of the program but the shape of its file', () => {
  const files = readdirSync(import.meta.dirname).filter((name) => name !== 'witness.test.ts');
  const imports = files.flatMap((name) => {
    const text = readFileSync(`${import.meta.dirname}/${name}`, 'utf8');
    return [...text.matchAll(/^import (.*) from '([^.'].*)';$/gm)].map(([, what = '', from = '']) => [from, what]);
  });
  const shape = '@/shared/shop-file/contract';
  expect([...new Set(imports.map(([from]) => from))].sort()).toEqual([shape, 'luxon', 'rrule']);
  expect(imports.filter(([from, what]) => from === shape && !what?.startsWith('type '))).toEqual([]);
});
