import { finishBodyOf } from '@/shared/mix/finish-body';
import { afterwards, type MixAction } from '@/shared/mix/mix-action';
import type { MixPlan } from '@/shared/mix/mix-plan';
import { beginMix, type MixProgress } from '@/shared/mix/mix-progress';
import { Day } from '@/shared/time/day';
import { Zone } from '@/shared/time/zone';

const bottle = (lotId: string, place: number, left: number) => ({
  ...{
    lotId,
    place,
    label: `Bottle ${lotId}`,
    code: `BB1:${lotId}/${place + 1}`,
    keptIn: null,
    opened: false,
    left,
    expired: null,
  },
});

const product = (id: string, form: 'liquid' | 'powder', bottles: MixPlan['products'][number]['bottles']) => ({
  ...{ id, name: id, form, densityGPerMl: null, gramsPerTeaspoon: null, liquid: 'feed' as const, reiMinutes: 240 },
  bottles,
});

const pour = (id: string, perFill: number | null) => ({
  ...{
    product: id,
    perFill,
    measuredText: null,
    measuredWith: null,
    markText: null,
    mark: null,
    tools: [],
    exactText: null,
    errorText: null,
    missing: null,
  },
  ...{ why: 'first', farOff: null, coarse: null, shortText: null, costMicros: 100, most: null },
});

/** Three fills of 2 L: 40 mL of oil out of two bottles, 5 g of salt, and an acid for the pH. */
export const PLAN: MixPlan = {
  ...{ query: 'recipe=r&bench=b', shopId: 's', zone: Zone.parse('America/New_York'), units: 'us', currency: 'USD' },
  ...{
    asOf: 0,
    by: 'Ada',
    recipe: { id: 'r', name: 'Recipe' },
    near: [],
    planned: { program: 'g', on: Day.parse('2026-03-31') },
  },
  benches: [{ id: 'b', name: 'Bench' }],
  shopBenches: [
    { id: 'b', name: 'Bench' },
    { id: 'c', name: 'Ferns' },
  ],
  ...{ plantsText: null, sprayText: '6 L', fills: 3, fill: 2_000_000, fillText: '2 L', level: 0.5, sprayer: 'Sprayer' },
  ...{
    waterFirstText: '1 L',
    signalWord: 'CAUTION',
    equipment: ['gloves'],
    equipmentUnknown: [],
    rei: '4 h',
    reiMinutes: 240,
    ownAcid: null,
  },
  ...{ useWithin: '2 h', useWithinMinutes: 120, stops: [], warnings: [], burn: null, plannedCost: 1_500_000 },
  pours: [pour('oil', 40_000), pour('salt', 5_000)],
  pH: { target: '6', before: '7.8', message: null, own: null, unreckoned: null },
  acids: [
    {
      product: 'acid',
      firstText: '2 mL',
      firstWith: null,
      firstTool: null,
      allText: '3 mL',
      expectedPh: '6.6',
      missing: null,
    },
  ],
  products: [
    product('oil', 'liquid', [bottle('o', 0, 50_000), bottle('o', 1, 500_000)]),
    product('salt', 'powder', [bottle('p', 0, 900_000)]),
    product('acid', 'liquid', [bottle('a', 0, 100_000)]),
    product('soap', 'liquid', []),
  ],
  leftover: [{ id: 'c', name: 'Ferns', roomText: '400 mL', inProgram: true }],
};

/** The salt is so little that nothing there measures it. */
export const FAR: MixPlan = {
  ...PLAN,
  pours: PLAN.pours.map((pour) => (pour.product === 'salt' ? { ...pour, farOff: 'No.' } : pour)),
};

export const OIL_1 = { lotId: 'o', place: 0 };
export const OIL_2 = { lotId: 'o', place: 1 };

export const ID = 'a'.repeat(32);
export const begun = (plan: MixPlan = PLAN) => beginMix(plan, ID, 1_000);
export const after = (progress: MixProgress, ...actions: MixAction[]) => actions.reduce(afterwards, progress);

export const TIMES: MixAction[] = [
  { do: 'spraying', since: Date.UTC(2026, 2, 31, 21, 40, 20) },
  { do: 'answer', field: 'endedAt', text: '2026-03-31T18:20' },
];
export const poured = (fill: number): MixAction[] =>
  ['oil', 'salt'].map((product) => ({ do: 'poured', fill, product }) satisfies MixAction);
export const bodyOf = (progress: MixProgress) => {
  const finishing = finishBodyOf(progress);
  if (!finishing.ok) throw new Error(JSON.stringify(finishing.faults));
  return finishing.body;
};
