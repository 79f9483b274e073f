import 'server-only';
import type { Kept } from '@/shared/measure/read-stock';
import { type Stock, stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Day, daysBetween } from '@/shared/time/day';
import { Zone } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { type History, historyOf, measuresOf } from '../data/ledger-rows';
import { newCommandId } from '../data/new-id';
import { wasDrawnFrom } from '../engine/ledger/decide';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import type { Container } from '../engine/shop';
import type { BottleSpot } from './bottle-address';
import { type LedgerLine, ledgerLines } from './bottle-ledger';
import { type BottleSeen, bottleSeen } from './bottle-seen';
import type { Fig } from './figures';
import { goodsOf } from './goods';
import { type House, houseNow } from './house';

/** One bottle: what is in it and since when, and everything that ever happened to it. */
export type BottleScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  spot: BottleSpot;
  /** Which of how many that came together, from 1. */
  number: number;
  count: number;
  product: { id: string; name: string; kind: string };
  kept: Kept;
  pack: string;
  size: Stock;
  left: Stock;
  seen: BottleSeen;
  figures: { remaining: Fig; lastUsableDay: Fig; value: Fig };
  /** Days from today to its last usable day; negative when that is past, null when it is not known. */
  daysLeft: number | null;
  receivedOn: Day;
  openedOn: Day | null;
  expiresOn: Day | null;
  keptIn: string | null;
  /** Whether anybody entered what it cost. */
  isPaid: boolean;
  lines: LedgerLine[];
  /** How many movements there are, so that a count can tell whether something moved meanwhile. */
  movements: number;
  /** Whether something was drawn that was not taken back. */
  drawnFrom: boolean;
  /** Where bottles of this shop stand. */
  places: string[];
  /** The id of the first command that a form of this page sends, for a browser that runs no scripts. */
  formId: string;
};

/**
 * A bottle as its page shows it. `again` when the shop changed between the two reads it takes; null when there is none.
 */
export async function bottleScreen(clock: Clock, spot: BottleSpot): Promise<BottleScreen | 'again' | null> {
  const house = await houseNow(clock);
  const history = house && (await historyOf(house.id, spot));
  if (!house || !history) return null;
  const container = house.shop.containers.find(({ lot, place }) => lot === history.lot && place === history.place);
  const left = leftIn(history);
  return container?.remaining === left ? screenOf(house, spot, container, history) : 'again';
}

function screenOf(house: House, spot: BottleSpot, container: Container, history: History): BottleScreen {
  const { shop, plan, today, ways, figure } = house;
  const { product, lot, place, receivedOn, openedOn, expiresOn, keptIn, packText, size, remaining } = container;
  const { form, densityGPerMl, gramsPerTeaspoon } = product;
  const its = (what: string) => figure('container', lot, place, what);
  const last = lastUsableDay(container);
  return {
    ...{ today, ways, shopId: house.id, spot, number: spot.place + 1, count: history.count },
    product: { id: product.id, name: product.name, kind: product.kind },
    ...{ kept: { form, densityGPerMl, gramsPerTeaspoon }, pack: packText, size, left: remaining },
    seen: bottleSeen(plan, container),
    figures: { remaining: its('remaining'), lastUsableDay: its('lastUsableDay'), value: its('value') },
    daysLeft: last && daysBetween(today, last),
    ...{ receivedOn, openedOn, expiresOn, keptIn },
    isPaid: container.paid !== null,
    lines: ledgerLines(history, shop),
    movements: history.ledger.movements.length,
    drawnFrom: wasDrawnFrom(history.ledger.movements),
    places: placesOf(shop.containers),
    formId: newCommandId(),
  };
}

const leftIn = ({ ledger }: History): number =>
  ledger.movements.reduce((held, { from, amount }) => held + (from === 'container' ? -amount : amount), 0);

/** Where the bottles of a shop stand, each place once. */
export const placesOf = (containers: readonly Container[]): string[] =>
  [...new Set(containers.flatMap(({ keptIn }) => (keptIn === null ? [] : [keptIn])))].sort();

/** What a form about a bottle needs to read what was typed; null when the shop has no such bottle. */
export async function bottleToWrite(shopId: string, { lotId, place }: BottleSpot) {
  const measures = await measuresOf(shopId, { lotId, place });
  if (!measures) return null;
  const units: 'us' | 'metric' = measures.units === 'metric' ? 'metric' : 'us';
  const zone = Zone.parse(measures.timeZone);
  return { kept: measures.kept, size: stock(measures.size), zone, units };
}

/** The lot of a bottle as the shop file tells it now, for whoever changes it; null when the shop has no such bottle. */
export async function lotToWrite(
  clock: Clock,
  shopId: string,
  spot: BottleSpot,
): Promise<ShopFile['lots'][number] | null> {
  const [goods, history] = [await goodsOf(clock, shopId), await historyOf(shopId, spot)];
  return goods?.file.lots.find(({ id }) => id === history?.lot) ?? null;
}
