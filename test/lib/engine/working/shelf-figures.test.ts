import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { workingOf } from '@/lib/engine/working/working';
import { Day } from '@/shared/time/day';
import { atClock } from '@/shared/time/zone';

const TODAY = Day.parse('2026-03-03');

function figuresOf(change: (file: ReturnType<typeof demoShop>) => void = () => undefined) {
  const file = demoShop(TODAY);
  change(file);
  const shop = shopOfFile(file);
  const plan = planAhead(shop, TODAY, 26);
  return { plan, benches: [], now: atClock(shop.zone, TODAY, 960) };
}

const micros = (value: { kind: string; micros?: number } | undefined) => value?.micros ?? 0;

test.each(['shelf/value', 'shelf/wasteCost'])('what %s is made of adds up to it, to the micro', (address) => {
  const working = workingOf(figuresOf(), address);
  expect(micros(working?.value)).toBeGreaterThan(0);
  expect((working?.steps ?? []).reduce((sum, { value }) => sum + micros(value), 0)).toBe(micros(working?.value));
});

test('the shelf is worth what its bottles are, by product and by bottle, and what is on its way is not on it', () => {
  const figures = figuresOf();
  const standing = figures.plan.shop.containers.filter(({ receivedOn }) => receivedOn <= TODAY);
  expect(standing.length).toBeLessThan(figures.plan.shop.containers.length);
  const bottles = standing.map(({ lot, place }) =>
    micros(workingOf(figures, `container/${lot}/${place}/value`)?.value),
  );
  expect(micros(workingOf(figures, 'shelf/value')?.value)).toBe(bottles.reduce((sum, each) => sum + each, 0));
  for (const { product } of figures.plan.products) {
    const working = workingOf(figures, `product/${product.id}/value`);
    expect((working?.steps ?? []).reduce((sum, { value }) => sum + micros(value), 0)).toBe(micros(working?.value));
  }
});

test('a bottle whose price was never entered is counted as unknown, and the sum goes on without it', () => {
  const known = figuresOf();
  const unknown = figuresOf((file) => {
    for (const lot of file.lots) if (lot.id === 'oil-b') lot.paid = null;
  });
  expect(workingOf(known, 'shelf/unknownValues')?.value).toEqual({ kind: 'count', value: 0, of: 'bottles' });
  expect(workingOf(unknown, 'shelf/unknownValues')?.value).toEqual({ kind: 'count', value: 1, of: 'bottles' });
  const value = micros(workingOf(known, 'container/oil-b/0/value')?.value);
  expect(value).toBeGreaterThan(0);
  expect(micros(workingOf(unknown, 'shelf/value')?.value)).toBe(micros(workingOf(known, 'shelf/value')?.value) - value);
});

test('a shelf of bottles without a price is worth nobody knows what, never nothing', () => {
  const figures = figuresOf((file) => {
    for (const lot of file.lots) lot.paid = null;
  });
  for (const address of ['shelf/value', 'shelf/wasteCost', 'product/light-oil-98/value']) {
    expect(workingOf(figures, address)?.value.kind, address).toBe('unknown');
  }
  const bare = figuresOf((file) => {
    file.lots = [];
  });
  expect(workingOf(bare, 'shelf/value')?.value).toEqual({ kind: 'money', micros: 0 });
});
