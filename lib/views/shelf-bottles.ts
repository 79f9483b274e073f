import { type Day, daysBetween } from '@/shared/time/day';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import { allBy } from '../engine/looked-up';
import type { Container, Product } from '../engine/shop';
import type { BottleAddress, BottleAddressOf } from './bottle-addresses';
import { type BottleSeen, bottleSeen } from './bottle-seen';
import type { Fig } from './figures';
import type { House } from './house';

/** One container with something in it, as the shelf shows it. */
export type ShelfBottle = {
  key: string;
  /** The address of its own page, which lasts as long as it does. */
  href: string;
  /** Its lot in the books and which of that lot it is, from 1, as its label says. */
  lotId: string;
  number: number;
  seen: BottleSeen;
  pack: string;
  lot: string;
  remaining: Fig;
  lastUsableDay: Fig;
  value: Fig;
  lastDay: Day | null;
  /** Days from today to its last usable day; negative when that is past, null when it is not known. */
  daysLeft: number | null;
  receivedOn: Day;
  openedOn: Day | null;
  /** Whether it has yet to arrive. */
  coming: boolean;
  /** Where it stands; null when nobody noted it. */
  keptIn: string | null;
};

const containersOf = allBy((container: Container) => container.product);

/** The containers of a product with something in them, the first to die first. */
export function bottlesOf(house: House, product: Product, addressOf: BottleAddressOf): ShelfBottle[] {
  return containersOf(house.shop.containers, product)
    .filter((one) => one.remaining > 0)
    .map((container) => ({ ...shelfBottle(house, container), ...addressOf(container) }))
    .sort((a, b) => (a.lastDay ?? NEVER).localeCompare(b.lastDay ?? NEVER));
}

const NEVER = '9999-12-31';

function shelfBottle({ plan, today, figure }: House, container: Container): Omit<ShelfBottle, keyof BottleAddress> {
  const { lot, place, packText, receivedOn, openedOn, keptIn } = container;
  const lastDay = lastUsableDay(container);
  return {
    key: `${lot} ${place}`,
    seen: bottleSeen(plan, container),
    pack: packText,
    lot,
    remaining: figure('container', lot, place, 'remaining'),
    lastUsableDay: figure('container', lot, place, 'lastUsableDay'),
    value: figure('container', lot, place, 'value'),
    lastDay,
    daysLeft: lastDay && daysBetween(today, lastDay),
    receivedOn,
    openedOn,
    coming: receivedOn > today,
    keptIn,
  };
}
