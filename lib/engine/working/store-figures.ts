import { type Stock, sum } from '@/shared/quantity/amounts';
import type { Plan } from '../ahead/plan';
import type { Container, Product } from '../shop';
import { bottleName } from './line-figures';
import { standingNow } from './shelf-figures';
import { type FoundWorking, figureAddress, worked } from './shown';

/** What of one product stands at one place; null where nobody noted the place. */
export type Stored = { place: string | null; product: Product; containers: Container[] };

/** Everything in the store by where it stands, and there by product; what stands nowhere known comes last. */
export function storedNow(plan: Pick<Plan, 'shop' | 'today'>): Stored[] {
  const stored = new Map<string, Stored>();
  for (const container of standingNow(plan)) {
    const { keptIn: place, product } = container;
    const key = JSON.stringify([place, product.id]);
    const there = stored.get(key);
    if (there) there.containers.push(container);
    else stored.set(key, { place, product, containers: [container] });
  }
  return [...stored.values()].sort(byPlace);
}

function byPlace(a: Stored, b: Stored): number {
  if (a.place === b.place) return a.product.name < b.product.name ? -1 : 1;
  if (a.place === null || b.place === null) return a.place === null ? 1 : -1;
  return a.place < b.place ? -1 : 1;
}

/** What of a product stands at a place, added up. */
export const amountStored = ({ containers }: Stored): Stock => sum(containers.map(({ remaining }) => remaining));

/** The address of that sum. */
export const storedAddress = ({ place, product }: Stored): string =>
  figureAddress('store', product.id, ...(place === null ? [] : [place]));

/** The working of what stands at a place: `store/PRODUCT/PLACE`, or `store/PRODUCT` for what stands nowhere known. */
export function storeWorking(plan: Plan, [id, at]: string[]): FoundWorking | null {
  const place = at ?? null;
  const stored = storedNow(plan).find((one) => one.product.id === id && one.place === place);
  if (!stored) return null;
  const { form, name } = stored.product;
  return {
    title: `${name} ${place === null ? 'where nobody noted the place' : `in ${place}`}`,
    value: { kind: 'stock', amount: amountStored(stored), form },
    rule: 'What is left in every container that has come and stands there, added up.',
    steps: stored.containers.map((container) =>
      worked(
        bottleName(container),
        { kind: 'stock', amount: container.remaining, form },
        'its movements',
        figureAddress('container', container.lot, container.place, 'remaining'),
      ),
    ),
  };
}
