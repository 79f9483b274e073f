import { beforeAll, expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { figureAddress } from '@/lib/engine/working/shown';
import { type Figures, workingOf } from '@/lib/engine/working/working';
import { Day } from '@/shared/time/day';
import { atClock } from '@/shared/time/zone';

const TODAY = Day.parse('2026-03-03');
let figures: Figures;
let addresses: string[];

beforeAll(() => {
  const shop = shopOfFile(demoShop(TODAY));
  const plan = planAhead(shop, TODAY, 26);
  const now = atClock(shop.zone, TODAY, 16 * 60);
  figures = { plan, benches: keepOut(shop, now), now };
  addresses = [
    ...plan.sprayings.flatMap(({ program, date, lines }) => [
      ...['sprayMl', 'fills', 'plants', 'materialCost', 'labourCost', 'costPerPlant', 'costPerLitre', 'reopensAt'].map(
        (figure) => figureAddress('spraying', program.id, date, figure),
      ),
      ...lines.flatMap((_, line) =>
        ['amount', 'used', 'short', 'cost'].map((figure) =>
          figureAddress('spraying', program.id, date, 'line', line, figure),
        ),
      ),
    ]),
    ...shop.recipes.flatMap(({ id, ingredients }) => [
      figureAddress('recipe', id, 'costPerLitre'),
      figureAddress('recipe', id, 'strength', 0),
      ...ingredients.flatMap((_, line) =>
        ['perLitre', 'perGallon', 'perFill', 'cost'].map((figure) => figureAddress('recipe', id, 'line', line, figure)),
      ),
    ]),
    ...plan.products.flatMap(({ product, weeks }) => [
      ...['onHand', 'usable', 'runsOutOn', 'orderBy', 'weeksUntilReorder', 'wasteCost', 'value'].map((figure) =>
        figureAddress('product', product.id, figure),
      ),
      ...weeks.flatMap((_, week) =>
        ['need', 'used', 'short', 'wasted', 'received', 'closing'].map((column) =>
          figureAddress('product', product.id, 'week', week, column),
        ),
      ),
    ]),
    ...shop.containers.flatMap(({ lot, place }) =>
      ['remaining', 'lastUsableDay', 'value'].map((figure) => figureAddress('container', lot, place, figure)),
    ),
    ...shop.benches.map(({ id }) => figureAddress('bench', id, 'until')),
    ...plan.sprayings.flatMap(({ date }) =>
      ['materialCost', 'labourCost'].map((figure) => figureAddress('day', date, figure)),
    ),
    ...['materialCost', 'labourCost', 'wasteCost', 'unknownCosts'].map((figure) => figureAddress('totals', figure)),
    ...['value', 'unknownValues', 'wasteCost', 'replaceCost'].map((figure) => figureAddress('shelf', figure)),
    ...plan.products.map(({ product }) => figureAddress('product', product.id, 'replaceCost')),
    ...shop.offers.map(({ id }) => figureAddress('offer', id, 'unitPrice')),
  ];
});

test('every figure of the demo shop opens to a rule in words and to inputs that each say where they came from', () => {
  for (const address of addresses) {
    const working = workingOf(figures, address);
    if (!working) throw new Error(`${address} does not open`);
    expect(working.rule.length, address).toBeGreaterThan(20);
    for (const step of working.steps) expect(step.from, `${address}: ${step.label}`).not.toBe('');
  }
});

test('an input that is a figure itself opens in turn, and shows the same value there', () => {
  for (const address of addresses) {
    for (const { figure, value, label } of workingOf(figures, address)?.steps ?? []) {
      if (figure === null) continue;
      const inner = workingOf(figures, figure);
      if (!inner) throw new Error(`${address}: ${label} leads to ${figure}, which does not open`);
      if (value.kind !== 'unknown' && inner.value.kind === value.kind && sameSubject(address, figure))
        expect(inner.value, `${address} → ${figure}`).toEqual(value);
    }
  }
});

/** A bottle's waste leads to the bottle, and a draw to what is left: those are other figures of the same thing. */
const sameSubject = (address: string, figure: string) =>
  !figure.startsWith('container/') || address.startsWith('container/');

test('the inputs of a cost add up to it, to the micro', () => {
  for (const address of addresses.filter((one) => /^(spraying.*(materialCost|\/cost)|day.*)$/.test(one))) {
    const working = workingOf(figures, address);
    if (working?.value.kind !== 'money') continue;
    const sum = working.steps.reduce((total, { value }) => total + (value.kind === 'money' ? value.micros : 0), 0);
    expect(sum, address).toBe(working.value.micros);
  }
});

test.each(['', 'spraying', 'spraying/none/2026-03-03/materialCost', 'product/none/onHand', 'totals/none', '%E0%A4%A'])(
  '"%s" is no figure',
  (address) => {
    expect(workingOf(figures, address)).toBeNull();
  },
);

test('a bottle that will be wasted in part says how much, at what cost, and what was taken from it before', () => {
  const file = demoShop(TODAY);
  for (const lot of file.lots) if (lot.product === 'light-oil-98') lot.expiresOn = '2026-03-20';
  const shop = shopOfFile(file);
  const plan = planAhead(shop, TODAY, 26);
  const inPart = plan.products
    .flatMap(({ wastes }) => wastes)
    .filter(({ container, amount }) => amount < container.remaining);
  expect(inPart.length).toBeGreaterThan(0);
  for (const { container, amount, cost } of inPart) {
    const its = (figure: string) =>
      workingOf({ ...figures, plan }, figureAddress('container', container.lot, container.place, figure));
    expect(its('wasted')?.value).toMatchObject({ kind: 'stock', amount });
    const taken = (its('wasted')?.steps ?? [])
      .slice(1)
      .map(({ value }): number => (value.kind === 'stock' ? value.amount : 0));
    expect(container.remaining - taken.reduce((sum, each) => sum + each, 0)).toBe(amount);
    expect(its('wasteCost')?.value).toEqual({ kind: 'money', micros: cost });
  }
});

test('a bench that is open says which interval was the last to elapse', () => {
  const open = figures.benches.filter(({ state }) => state === 'open');
  expect(open.length).toBeGreaterThan(0);
  for (const { bench } of open) {
    const working = workingOf(figures, figureAddress('bench', bench.id, 'until'));
    expect(working?.steps.map(({ label }) => label)).toContain('It ended');
  }
});
