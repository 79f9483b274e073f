import { flagRows, planOf, shopWith, type Written } from './plan-of';

/*
 * One spraying with what is told of it, and what is flagged then. Source of every case that uses it: worked by hand from
 * the definitions of the shop file.
 */

type Product = NonNullable<Written['products']>[number];
export type Case = {
  label?: Product['label'];
  dose?: string;
  use?: string;
  /** When the bench was sprayed with the same recipe before: start and end. */
  sprayed?: [startedAt: string, endedAt: string | null][];
  startTime?: string;
  customers?: boolean;
  second?: Partial<Product>;
  lots?: Written['lots'];
  repeat?: string;
  water?: NonNullable<Written['shop']>['water'];
  targetPh?: number;
  harvestOn?: string;
  useWithinHours?: number;
  /** What the sprayed product holds, where it is not just anything. */
  substance?: string;
  monthlyHighsC?: number[];
};

export const TODAY = '2026-06-01';
export const STOCK = {
  id: 'l1',
  product: 'p1',
  pack: '1 L',
  paid: '10.00',
  receivedOn: '2026-01-05',
  expiresOn: '2027-01-05',
};

/** One liquid on one bench, sprayed on Monday 1 June 2026 at 19:00 for 30 minutes; the shop is open 9:00 to 18:00. */
export function flagsOf({
  label,
  dose = '5 mL/L',
  use,
  sprayed = [],
  startTime,
  customers = false,
  second,
  lots,
  repeat,
  water,
  targetPh,
  harvestOn,
  useWithinHours,
  substance,
  monthlyHighsC,
}: Case) {
  const hours: [string, string][] = [['09:00', '18:00']];
  const others = second ? [{ id: 'p2', name: 'P2', kind: 'other' as const, form: 'liquid' as const, ...second }] : [];
  const plan = planOf(
    shopWith({
      shop: {
        water,
        monthlyHighsC,
        openingHours: { mon: hours, tue: hours, wed: hours, thu: hours, fri: hours, sat: hours, sun: hours },
      },
      products: [
        {
          id: 'p1',
          name: 'P1',
          kind: 'insecticide',
          form: 'liquid',
          formulation: 'EC',
          contents: substance ? [{ substance, amount: 80, basis: '% w/w' }] : [],
          label: { reiHours: 0, ...label },
        },
        ...others,
      ],
      lots: [...(lots ?? [STOCK]), ...others.map(({ id }) => ({ ...STOCK, id: 'l2', product: id }))],
      benches: [
        { id: 'b1', name: 'Bench', customers, harvestOn, plants: [{ name: 'plant', count: 10, mlPerPlant: 100 }] },
      ],
      recipes: [
        {
          id: 'r1',
          name: 'Recipe',
          targetPh,
          useWithinHours,
          ingredients: [{ product: 'p1', dose, use }, ...others.map(({ id }) => ({ product: id, dose: '1 mL/L' }))],
        },
      ],
      programs: [
        {
          id: 'g1',
          recipes: ['r1'],
          benches: ['b1'],
          startsOn: TODAY,
          repeat,
          startTime: startTime ?? '19:00',
          minutes: 30,
        },
      ],
      applications: sprayed.map(([startedAt, endedAt], index) => ({
        id: `a${index}`,
        recipe: 'r1',
        benches: ['b1'],
        startedAt,
        endedAt,
      })),
    }),
    TODAY,
    1,
  );
  return flagRows(plan);
}
