import { sum } from '@/shared/quantity/amounts';
import type { Container } from '../shop';
import { amountOf, counted, dayNear } from './in-words';
import type { Unflagged } from './unflagged';

/** Those containers of one lot that a rule is about, at least one. */
export type LotPart = { first: Container; containers: Container[] };

/** The containers with something in them that are of a kind, lot by lot, in the shop's order. */
export function lotsWhere({ shop }: Unflagged, isOne: (container: Container) => boolean): LotPart[] {
  const lots = new Map<string, LotPart>();
  for (const container of shop.containers) {
    if (container.remaining === 0 || !isOne(container)) continue;
    const lot = lots.get(container.lot);
    if (lot) lot.containers.push(container);
    else lots.set(container.lot, { first: container, containers: [container] });
  }
  return [...lots.values()];
}

/** "Light oil, 1 qt, received Mon 2 February", with how many of them when there are several. */
export function lotInWords(plan: Unflagged, { first, containers }: LotPart): string {
  const bottle = `${first.product.name}, ${first.packText}, received ${dayNear(plan, first.receivedOn)}`;
  return containers.length === 1 ? bottle : `${counted(containers.length, 'container')} of ${bottle}`;
}

/** What is left in them together. */
export const leftIn = (plan: Unflagged, { first, containers }: LotPart): string =>
  amountOf(plan, sum(containers.map(({ remaining }) => remaining)), first.product);
