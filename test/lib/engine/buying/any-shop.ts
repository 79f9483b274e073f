import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { addDays } from '@/shared/time/day';
import { shopWith } from '../../../worked/plan-of';
import { pickerFrom, TODAY } from './any-market';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const CODES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** A whole small shop, made up and repeatable: bottles on the shelf, suppliers that ask for this and that, sprayings. */
export function anyShop(seed: number): Shop {
  const pick = pickerFrom(seed);
  const list = <T>(most: number, one: (index: number) => T): T[] =>
    Array.from({ length: 1 + pick(most) }, (_, at) => one(at));
  const money = (least: number, range: number) => `${least + pick(range)}.${10 + pick(89)}`;
  const suppliers = list(3, (id) => ({
    id: `s${id}`,
    name: `Supplier ${id}`,
    freightPerOrder: pick(4) ? money(4, 20) : null,
    freeFreightOver: pick(3) ? null : money(60, 100),
    minimumOrder: pick(4) ? null : money(10, 50),
    workingDays: DAYS.filter((_, day) => day < 5 && (day === 1 || pick(5) > 0)),
  }));
  const products = list(4, (id) => ({
    ...{ id: `p${id}`, name: `Product ${id}`, kind: 'nutrient' as const, form: 'liquid' as const },
    shelfLife: { unopenedDays: pick(3) ? null : 90 + pick(400), openedDays: pick(4) ? 20 + pick(200) : null },
  }));
  const offers = products.flatMap(({ id: product }, at) =>
    list(3, (turn) => ({
      ...{ id: `o${at}-${turn}`, product, supplier: suppliers[pick(suppliers.length)]?.id ?? 's0' },
      ...{ pack: `${100 * (1 + pick(30))} mL`, price: money(5, 60), leadDays: pick(8) },
      breaks: pick(4) ? [] : [{ atLeast: 2 + pick(3), price: money(4, 20) }],
    })),
  );
  const lots = products
    .flatMap(({ id: product }, at) =>
      pick(3) === 0
        ? []
        : list(2, (turn) => ({
            ...{ id: `l${at}-${turn}`, product, pack: '500 mL', remaining: `${50 + pick(450)} mL`, paid: '20.00' },
            receivedOn: addDays(TODAY, -pick(200)),
            openedOn: pick(2) ? addDays(TODAY, -pick(10)) : null,
            expiresOn: pick(2) ? addDays(TODAY, pick(200)) : null,
          })),
    )
    .map((lot) => (lot.openedOn !== null && lot.openedOn < lot.receivedOn ? { ...lot, openedOn: null } : lot));
  const recipes = list(3, (id) => ({
    ...{ id: `r${id}`, name: `Recipe ${id}` },
    ingredients: list(3, (turn) => ({
      product: products[(id + turn) % products.length]?.id ?? 'p0',
      dose: `${1 + pick(15)} mL/L`,
    })),
  }));
  const programs = recipes.map(({ id }, at) => ({
    ...{ id: `g${at}`, recipes: [id], benches: ['b0'], startsOn: addDays(TODAY, -pick(30)), minutes: 30 },
    ...{ repeat: `FREQ=WEEKLY;INTERVAL=${1 + pick(3)};BYDAY=${CODES[pick(7)]}`, startTime: '08:00' },
  }));
  const written = shopWith({
    shop: { safetyDays: pick(5), capitalPerYear: [0, 0.1, 0.4][pick(3)] ?? 0 },
    ...{ suppliers, products, offers, lots, recipes, programs },
    benches: [
      { id: 'b0', name: 'Bench', plants: [{ name: 'plants', count: 20 + pick(200), mlPerPlant: 10 + pick(60) }] },
    ],
  });
  const parsed = parseShopFile(JSON.stringify(written));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return shopOfFile(parsed.file);
}
