import { readMoney } from '@/shared/measure/money';
import type { Reading } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { minutesUp } from '@/shared/time/hours';
import { readInstant } from '@/shared/time/instant';
import { packOf } from './pack-of';
import { plainInstant, plainMoney, plainStock } from './plain-text';

type FileApplication = ShopFile['applications'][number];
type FileProduct = ShopFile['products'][number];
type ById<T> = Map<string, T>;

const WATER = { form: 'liquid', densityGPerMl: null, gramsPerTeaspoon: null } as const;

/**
 * A record in its one plain form. One that does not say what went in is of what the recipe says, under the intervals
 * of the labels beside it.
 *
 * Takes    the file, and its products by id
 */
export function plainApplications(file: ShopFile, products: ById<FileProduct>) {
  const recipes = new Map(file.recipes.map((recipe) => [recipe.id, recipe]));
  return (application: FileApplication): FileApplication => ({
    ...application,
    startedAt: plainInstant(value(readInstant(application.startedAt))),
    endedAt: moment(application.endedAt),
    mixedAt: moment(application.mixedAt),
    closedUntil: moment(application.closedUntil),
    products:
      application.products.length > 0
        ? application.products.map((line) => ({ ...line, amount: amountIn(line.amount, products.get(line.product)) }))
        : asTheRecipeSays(recipes.get(application.recipe), products),
    sprayed: amountIn(application.sprayed, WATER),
    leftover: amountIn(application.leftover, WATER),
    acid: application.acid && acidIn(application.acid, products),
    plannedCost: money(application.plannedCost),
    cost: money(application.cost),
  });
}

function asTheRecipeSays(
  recipe: ShopFile['recipes'][number] | undefined,
  products: ById<FileProduct>,
): FileApplication['products'] {
  return (recipe?.ingredients ?? []).map(({ product, dose }) => {
    const reiHours = products.get(product)?.label.reiHours ?? null;
    const asThen = { name: null, registration: null, actives: null };
    return { product, dose, amount: null, reiMinutes: reiHours === null ? null : minutesUp(reiHours), ...asThen };
  });
}

function acidIn(acid: NonNullable<FileApplication['acid']>, products: ById<FileProduct>): FileApplication['acid'] {
  const amount = amountIn(acid.amount, products.get(acid.product));
  return amount === null ? acid : { ...acid, amount };
}

function amountIn(text: string | null, product: Parameters<typeof packOf>[1] | undefined): string | null {
  const amount = text === null || !product ? null : packOf(text, product);
  return amount === null || !product ? text : plainStock(amount, product.form);
}

const moment = (text: string | null): string | null => (text === null ? null : plainInstant(value(readInstant(text))));

const money = (text: string | null): string | null => (text === null ? null : plainMoney(value(readMoney(text))));

function value<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new RangeError(`plain record: ${reading.message}`);
  return reading.value;
}
