import fc from 'fast-check';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { anyShopFile } from '../../data/any-shop-file';

/*
 * Optional fields that somebody may not have entered.
 *
 * Left out are those of which the contract says what stands in their place, so that leaving them out says something:
 * `coverage`, `remaining` (full), `openedOn` (not opened), `expiresOn` beside an unopened life, `endsOn` (it goes on),
 * `repeat` (once), `expectedOn` of an order (as their delivery time has it), `freeFreightOver` (always paid).
 */

type Field = { path: string; touches: string[]; holder: Record<string, unknown>; name: string };

const fieldsOf = (list: string, holder: object, names: string[], touches: string[]): Field[] =>
  names.map((name) => ({
    path: `${list}.${name}`,
    touches: [`${list}.${name}`, ...touches],
    holder: { of: holder },
    name,
  }));

/** Every optional field of a file that has a value. */
export function forgettable(file: ShopFile): { path: string; touches: string[] }[] {
  return allFields(file)
    .filter(({ holder, name }) => (holder.of as Record<string, unknown>)[name] != null)
    .map(({ path, touches }) => ({ path, touches }));
}

/** The same file without a field; null when it is refused without it. */
export function without(file: ShopFile, path: string): ShopFile | null {
  const copy: ShopFile = structuredClone(file);
  const field = allFields(copy).find((one) => one.path === path);
  if (!field) throw new Error(`no field ${path}`);
  (field.holder.of as Record<string, unknown>)[field.name] = null;
  const parsed = parseShopFile(JSON.stringify(copy));
  return parsed.ok ? parsed.file : null;
}

function allFields(file: ShopFile): Field[] {
  const programsOf = (bench: string) =>
    file.programs.filter(({ benches }) => benches.includes(bench)).map(({ id }) => id);
  const productsIn = (bench: string) =>
    file.programs
      .filter(({ benches }) => benches.includes(bench))
      .flatMap(({ recipes }) => recipes)
      .flatMap((id) => file.recipes.find((one) => one.id === id)?.ingredients.map(({ product }) => product) ?? []);
  const offered = (supplier: string) =>
    file.offers.filter((one) => one.supplier === supplier).map(({ product }) => product);
  const sprayedWith = (product: string) =>
    file.applications
      .filter(({ recipe, products }) =>
        [...products, ...(file.recipes.find(({ id }) => id === recipe)?.ingredients ?? [])].some(
          (one) => one.product === product,
        ),
      )
      .flatMap(({ benches }) => benches);
  /** A bottle without a printed day lasts as long as its product does. */
  const lastDaysOf = (product: string) =>
    file.lots.flatMap((lot, at) => (lot.product === product ? [`lots[${at}].expiresOn`] : []));
  /** An order without an expected day comes when its lines' delivery times are over. */
  const expectedOf = ({ supplier }: ShopFile['offers'][number]) =>
    file.orders.flatMap((order, at) => (order.supplier === supplier ? [`orders[${at}].expectedOn`] : []));
  return [
    ...fieldsOf('shop', file.shop, ['wagePerHour', 'water'], ['wage']),
    ...file.products.flatMap((product, at) => [
      ...fieldsOf(`products[${at}]`, product, ['densityGPerMl', 'gramsPerTeaspoon'], [product.id]),
      ...fieldsOf(`products[${at}].label`, product.label, ['reiHours'], [product.id, ...sprayedWith(product.id)]),
      ...fieldsOf(
        `products[${at}].shelfLife`,
        product.shelfLife,
        ['unopenedDays', 'openedDays'],
        [product.id, ...lastDaysOf(product.id)],
      ),
    ]),
    ...file.benches.flatMap((bench, at) => {
      const touches = [bench.id, ...programsOf(bench.id), ...productsIn(bench.id)];
      return [
        ...fieldsOf(`benches[${at}]`, bench, ['area'], touches),
        ...bench.plants.flatMap((group, place) =>
          fieldsOf(`benches[${at}].plants[${place}]`, group, ['mlPerPlant'], touches),
        ),
      ];
    }),
    ...file.lots.flatMap((lot, at) => {
      const keeps = file.products.find(({ id }) => id === lot.product)?.shelfLife.unopenedDays != null;
      return fieldsOf(`lots[${at}]`, lot, keeps ? ['paid'] : ['paid', 'expiresOn'], [lot.product]);
    }),
    ...file.suppliers.flatMap((supplier, at) =>
      fieldsOf(`suppliers[${at}]`, supplier, ['freightPerOrder', 'minimumOrder'], offered(supplier.id)),
    ),
    ...file.offers.flatMap((offer, at) =>
      fieldsOf(`offers[${at}]`, offer, ['leadDays'], [offer.product, ...expectedOf(offer)]),
    ),
    ...file.applications.flatMap((record, at) => fieldsOf(`applications[${at}]`, record, ['endedAt'], record.benches)),
  ];
}

const DOSES = {
  liquid: ['5 mL/gal', '2 g/L', '0.3 mL/m2', '6 drops/gal'],
  powder: ['1.5 g/L', '1 tsp/gal', '0.4 g/m2', '1 tbsp/gal'],
} as const;

/** Shops in which doses need every kind of figure, and in which more is known than in any shop. */
export const anyKnownShop: fc.Arbitrary<ShopFile> = fc
  .tuple(anyShopFile, fc.array(fc.nat(3), { minLength: 3, maxLength: 3 }), fc.boolean())
  .map(([file, picks, isKnown]) => {
    const copy: ShopFile = structuredClone(file);
    for (const product of copy.products) {
      product.madeFrom = [];
      // Next to nothing of a substance makes doses that nothing can hold.
      for (const content of product.contents) content.amount = Math.round(content.amount) + 1;
      if (!isKnown) continue;
      product.densityGPerMl ??= 1.1;
      product.gramsPerTeaspoon ??= 4;
      product.label.reiHours ??= 4;
    }
    for (const bench of isKnown ? copy.benches : []) {
      bench.area ??= '12 m2';
      if (bench.plants.length === 0) bench.plants.push({ name: 'one', pot: null, count: 40, mlPerPlant: 20 });
      for (const group of bench.plants) group.mlPerPlant ??= 12;
    }
    for (const recipe of copy.recipes) {
      for (const [at, line] of recipe.ingredients.entries()) {
        const form = copy.products.find(({ id }) => id === line.product)?.form ?? 'liquid';
        line.dose = DOSES[form][picks[at] ?? 0] ?? line.dose;
      }
    }
    const parsed = parseShopFile(JSON.stringify(copy));
    return parsed.ok ? parsed.file : file;
  });
