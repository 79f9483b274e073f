import { expect } from 'vitest';
import type { Dosed } from '@/lib/engine/strength/dose-in-stock';
import { readSize, readVolume } from '@/shared/measure/size';
import { toNumber } from '@/shared/quantity/exact';
import { planOf, shopWith, type Written } from '../worked/plan-of';

/* How our figures are held against published ones, and what published rates come to in a plan. */

/** Ours is within a relative difference of what is published. */
export const near = (ours: number, published: number, within: number): void =>
  expect(Math.abs(ours - published) / published, `${ours} beside ${published}`).toBeLessThanOrEqual(within);

/** Ours, rounded as the source rounds, is what the source prints: "0.42", "5". */
export function printedAs(ours: number, printed: string): void {
  const digits = printed.split('.')[1]?.length ?? 0;
  // A little is added, because 0.125 is held as slightly less by a double.
  expect((ours * (1 + 1e-12)).toFixed(digits)).toBe(printed);
}

export function ml(text: string): number {
  const reading = readVolume(text);
  if (!reading.ok) throw new Error(reading.message);
  return toNumber(reading.value);
}

export function grams(text: string): number {
  const reading = readSize(text, 'powder');
  if (!reading.ok || reading.value.kind !== 'mass') throw new Error(`${text} is no weight`);
  return toNumber(reading.value.milligrams) / 1000;
}

export type Parts = Partial<Dosed> & { form: 'liquid' | 'powder' };

const WRITTEN = { id: 'p1', name: 'P1', kind: 'insecticide', label: { reiHours: 0 } } as const;

type Sprayed = { product: Parts; dose: string; sprayMl: number; area?: string };

/**
 * What one spraying takes of a product, mL or g, as a plan has it: a hundred plants that take all the spray, from
 * one sprayer that holds it.
 */
export function amountFor({ product, dose, sprayMl, area }: Sprayed): number {
  const plan = planOf(
    shopWith({
      shop: { fillCapacity: '1000 L' },
      products: [{ ...WRITTEN, ...(product as Partial<NonNullable<Written['products']>[number]>), form: product.form }],
      benches: [
        {
          id: 'b1',
          name: 'Bench',
          area,
          plants: [{ name: 'all', count: 100, mlPerPlant: Number((sprayMl / 100).toFixed(10)) }],
        },
      ],
      recipes: [{ id: 'r1', name: 'Recipe', ingredients: [{ product: 'p1', dose }] }],
      programs: [
        { id: 'g1', recipes: ['r1'], benches: ['b1'], startsOn: '2026-05-04', startTime: '10:00', minutes: 10 },
      ],
    }),
    '2026-05-04',
    1,
  );
  const amount = plan.sprayings[0]?.lines[0]?.amount;
  if (amount == null) throw new Error(`${dose} is not known`);
  return amount / 1000;
}

/** Whole gallons of spray in mL, as a file can write them. */
export const GALLON_ML = 3785.411784;
