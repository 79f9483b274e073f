import type { Written } from '@/shared/shop-file/contract';
import { dayAfter } from './calendar';
import type { Pick } from './pick';

/* Products, packs, bottles, benches and recipes made up. */

type Product = Written<'products'>;

const MODES = [
  'IRAC 3A',
  'IRAC 4A',
  'IRAC 4C',
  'IRAC 5',
  'FRAC M05',
  'FRAC 11',
  'FRAC 7',
  'IRAC UN',
  'FRAC NC',
  'IRAC 04A',
  'FRAC M5',
  'IRAC 8',
];
const BASES = {
  liquid: ['% w/w', '% w/v', 'g/L', 'lb/gal', '% v/v'],
  powder: ['% w/w', 'g/kg'],
} as const;
const LIQUID_DOSES = [
  '5 mL/L',
  '12 mL/gal',
  '2 tsp/gal',
  '1 1/2 tsp/gal',
  '6 drops/gal',
  '0.5 %',
  '8 fl oz/100 gal',
  '1.5 g/L',
  '0.75 fl oz/gal',
  '1 tbsp/gal',
];
const POWDER_DOSES = ['1.5 g/L', '2 tsp/gal', '0.1 %', '1 lb/100 gal', '0.5 oz/gal', '1 tbsp/gal', '250 mg/L'];
const LIQUID_PACKS = ['1 gal', '1 qt', '1 pt', '8 fl oz', '500 mL', '1 L', '250 mL', '60 mL', '2.5 gal'];
const POWDER_PACKS = ['1 lb', '250 g', '1 kg', '8 oz', '100 g', '25 g', '50 lb'];

const dosesOf = ({ form, contents }: Product): string[] => {
  const [content] = contents ?? [];
  const plain = form === 'liquid' ? LIQUID_DOSES : POWDER_DOSES;
  return content ? [...plain, `40 ppm ${content.substance}`, `175.5 ppm ${content.substance}`] : plain;
};
const packsOf = ({ form }: Product): string[] => (form === 'liquid' ? LIQUID_PACKS : POWDER_PACKS);

export function anyProduct(pick: Pick, at: number): Product {
  const form = pick.one(['liquid', 'liquid', 'powder'] as const);
  const product: Product = {
    ...{ id: `p${at}`, name: `Product ${at}`, form },
    kind: pick.one(['nutrient', 'insecticide', 'fungicide', 'surfactant'] as const),
    formulation: pick.one([null, 'EC', 'WP', 'SL']),
    densityGPerMl: pick.one([null, 1.05, 0.913, 1.2]),
    gramsPerTeaspoon: pick.one([null, 4.8, 3.3]),
    contents: pick.chance(60)
      ? [{ substance: `active ${at}`, amount: 0.5 + pick.below(40), basis: pick.one(BASES[form]) }]
      : [],
    shelfLife: { unopenedDays: pick.one([null, 30, 90, 730]), openedDays: pick.one([null, null, 0, 5, 14, 30, 365]) },
  };
  const doses = dosesOf(product);
  const [min, max] = pick.chance(50) ? [pick.one(doses), null] : [null, pick.one(doses)];
  return {
    ...product,
    label: {
      rates: pick.chance(40) ? [{ use: 'foliar', min, max }] : [],
      reiHours: pick.chance(8) ? null : pick.one([0, 4, 12, 12.51, 24, 48]),
      maxApplicationsPerYear: pick.one([null, null, 3, 6, 12]),
      minDaysBetween: pick.one([null, null, 0, 1, 7, 10]),
      modes: pick.many(0, 2, () => pick.one(MODES)).filter((mode, place, all) => all.indexOf(mode) === place),
      sprayPh: pick.chance(25) ? { min: 5.5, max: pick.one([6.5, 7, 8.5]) } : null,
      doNotMixWith: pick.chance(20) ? [pick.one(['WP', 'Nutrient', 'product 0', 'p1', 'ACTIVE 2', 'sl'])] : [],
    },
  };
}

export function anyBench(pick: Pick, at: number): Written<'benches'> {
  return {
    ...{ id: `b${at}`, name: `Bench ${at}`, customers: pick.chance(60), coverage: pick.one([1, 1.1, 0.85, 1.333]) },
    plants: pick.many(0, 3, (n) => ({
      name: `group ${n}`,
      count: 1 + pick.below(150),
      mlPerPlant: pick.chance(3) ? null : pick.one([8, 22.5, 60, 12.25, 0.1]),
    })),
  };
}

export function anyRecipe(pick: Pick, at: number, products: Product[]): Written<'recipes'> {
  const chosen = products.filter((_, place) => place === at % products.length || pick.chance(40));
  return {
    ...{ id: `r${at}`, name: `Recipe ${at}`, targetPh: pick.chance(40) ? 5.5 + pick.below(15) / 10 : null },
    ingredients: chosen.map((product) => ({
      product: product.id,
      dose: pick.one(dosesOf(product)),
      use: pick.chance(85) ? 'foliar' : 'drench',
    })),
  };
}

const price = (pick: Pick): string => `${5 + pick.below(200)}.${10 + pick.below(90)}`;

export function anyOffer(
  pick: Pick,
  id: string,
  product: Product,
  suppliers: { id: string }[],
  today: string,
): Written<'offers'> {
  const earlier = [{ since: pick.one([null, dayAfter(today, -60)]), price: price(pick) }];
  return {
    ...{ id: `o${id}`, supplier: pick.one(suppliers).id, product: product.id, pack: pick.one(packsOf(product)) },
    ...{
      price: price(pick),
      leadDays: pick.chance(10) ? null : pick.below(8),
      archived: pick.chance(8),
    },
    breaks: pick.chance(30) ? [{ atLeast: 3, price: '1.00' }] : [],
    since: pick.one([null, dayAfter(today, -30), today, dayAfter(today, 1), dayAfter(today, 20)]),
    earlier: pick.chance(60) ? earlier : [],
  };
}

export function anyLot(pick: Pick, id: string, product: Product, today: string): Written<'lots'> {
  const isFuture = pick.chance(20);
  const receivedOn = dayAfter(today, isFuture ? 1 + pick.below(40) : -pick.below(120));
  const pack = pick.one(packsOf(product));
  const count = pick.chance(70) ? 1 : 2 + pick.below(3);
  const isUsed = count === 1 && !isFuture && pick.chance(60);
  const opened = dayAfter(today, -pick.below(20));
  const unit = product.form === 'liquid' ? 'mL' : 'g';
  return {
    ...{ id: `l${id}`, product: product.id, pack, count, receivedOn },
    remaining: isUsed ? `${pick.below(24_999) / 1000} ${unit}` : null,
    paid: pick.chance(10) ? null : price(pick),
    openedOn: isUsed && opened >= receivedOn ? opened : null,
    expiresOn: pick.chance(50) ? null : dayAfter(receivedOn < today ? today : receivedOn, pick.below(90) - 10),
  };
}
