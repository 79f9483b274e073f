import type { ShopFile } from '@/shared/shop-file/contract';
import { dayAfter, daysBetween, instantText } from './calendar';
import { asNumber, fraction, over, rounded } from './fraction';
import { type Cheapest, cheapestOffer, orderBy } from './offers';
import { type Flag, flagsOf } from './rules';
import { type Container, containersOf, draw, isGone, isHere, pourAway, priced } from './shelf';
import { type Product, type Turn, turnsOf } from './sprayings';

/*
 * The weeks ahead of a shop, worked out a second time: one day after another, in whole µL, mg and micros, with nothing
 * of the program's own but the shop file that it read. Written from the definitions alone, and as simple as they allow.
 */

type Week = { need: bigint; used: bigint; short: bigint; wasted: bigint; received: bigint; closing: bigint };

type Ahead = {
  product: Product;
  shelf: Container[];
  offer: Cheapest | null;
  onHand: bigint;
  usable: bigint;
  weeks: (Week & { unknown: boolean })[];
  runsOutOn: string | null;
  unknownSince: string | null;
  /** Null as soon as the cost of something poured away is unknown. */
  wasteCost: bigint | null;
  knownWaste: bigint;
  /** How many pours have a cost that is unknown. */
  unknownWaste: number;
};

type Costed = { turn: Turn; costs: (bigint | null)[] };

export function witnessPlan(file: ShopFile, today: string, weeks: number) {
  const last = dayAfter(today, 7 * weeks - 1);
  const products = file.products.map((product) => aheadOf(file, product, today, weeks));
  const turns = turnsOf(file, today, last);
  const costed: Costed[] = [];
  const flags: Flag[] = flagsOf(file, turns, today);
  for (let day = today; day <= last; day = dayAfter(day, 1)) {
    const week = Math.floor(daysBetween(today, day) / 7);
    for (const ahead of products) startDay(ahead, day, today, week);
    for (const turn of turns.filter(({ date }) => date === day)) {
      costed.push({
        turn,
        costs: turn.lines.map((line) => take(line, aheadFor(products, line.product), day, week, flags, turn)),
      });
    }
    for (const ahead of products) endDay(ahead, day, week);
  }
  return documentOf(file, today, weeks, products, costed, flags);
}

function aheadFor(products: Ahead[], product: Product): Ahead {
  const one = products.find((ahead) => ahead.product === product);
  if (!one) throw new Error(`${product.id} is no product`);
  return one;
}

const sum = (amounts: bigint[]): bigint => amounts.reduce((total, each) => total + each, 0n);

function aheadOf(file: ShopFile, product: Product, today: string, weeks: number): Ahead {
  const shelf = file.lots
    .filter((lot) => lot.product === product.id)
    .flatMap((lot) => containersOf(lot, product, product.shelfLife));
  const here = shelf.filter(isHere(today));
  return {
    product,
    shelf,
    offer: cheapestOffer(file, product, today),
    onHand: sum(here.map(({ left }) => left)),
    usable: sum(here.filter((one) => !isGone(today)(one)).map(({ left }) => left)),
    weeks: Array.from({ length: weeks }, () => ({
      ...{ need: 0n, used: 0n, short: 0n, wasted: 0n, received: 0n, closing: 0n },
      unknown: false,
    })),
    ...{ runsOutOn: null, unknownSince: null, wasteCost: 0n, knownWaste: 0n, unknownWaste: 0 },
  };
}

const weekOf = (ahead: Ahead, week: number) => {
  const one = ahead.weeks[week];
  if (!one) throw new Error(`there is no week ${week}`);
  return one;
};

/** What comes on a day is there in the morning; what may not be used any more is poured away. */
function startDay(ahead: Ahead, day: string, today: string, week: number): void {
  const row = weekOf(ahead, week);
  if (day > today) row.received += sum(ahead.shelf.filter((one) => one.receivedOn === day).map(({ left }) => left));
  for (const { amount, cost } of pourAway(ahead.shelf, day)) {
    row.wasted += amount;
    ahead.knownWaste += cost ?? 0n;
    if (cost === null) ahead.unknownWaste += 1;
    ahead.wasteCost = ahead.wasteCost === null || cost === null ? null : ahead.wasteCost + cost;
  }
}

/** Takes what a line of a spraying asks for. Gives its cost, or null. */
function take(
  { amount }: Turn['lines'][number],
  ahead: Ahead,
  day: string,
  week: number,
  flags: Flag[],
  { program }: Turn,
): bigint | null {
  const row = weekOf(ahead, week);
  if (amount === null) {
    row.unknown = true;
    if (ahead.unknownSince === null)
      flags.push({ severity: 'warn', rule: 'unknown-need', on: day, program: program.id });
    ahead.unknownSince ??= day;
    return null;
  }
  const { drawn, cost } = draw(ahead.shelf, day, amount);
  const short = amount - drawn;
  row.need += amount;
  row.used += drawn;
  row.short += short;
  if (short === 0n) return cost;
  ahead.runsOutOn ??= day;
  flags.push({ severity: 'stop', rule: 'short', on: day, program: program.id });
  return cost === null || ahead.offer === null ? null : cost + priced(short, ahead.offer.perUnit);
}

function endDay(ahead: Ahead, day: string, week: number): void {
  weekOf(ahead, week).closing = sum(ahead.shelf.filter(isHere(day)).map(({ left }) => left));
}

/* From here on: as the contract prints it. */

const money = (amount: bigint | null): string | null => {
  if (amount === null) return null;
  const digits = String(amount < 0n ? -amount : amount).padStart(7, '0');
  return `${amount < 0n ? '-' : ''}${digits.slice(0, -6)}.${digits.slice(-6)}`;
};
const shown = (amount: bigint): number => Number(amount) / 1000;
const unitOf = ({ form }: Product): string => (form === 'liquid' ? 'mL' : 'g');
const added = (costs: (bigint | null)[]): bigint | null =>
  costs.reduce<bigint | null>((total, each) => (total === null || each === null ? null : total + each), 0n);

function documentOf(file: ShopFile, today: string, weeks: number, products: Ahead[], costed: Costed[], flags: Flag[]) {
  const materials = costed.map(({ costs }) => added(costs));
  costed.forEach(({ turn }, at) => {
    if (materials[at] === null)
      flags.push({ severity: 'note', rule: 'unknown-cost', on: turn.date, program: turn.program.id });
  });
  return {
    from: today,
    weeks,
    sprayings: costed.map(({ turn, costs }) => sprayingOf(file.shop.timeZone, turn, costs)),
    products: products.map((ahead) => productOf(file, ahead, today)),
    totals: {
      materialCost: money(sum(materials.map((cost) => cost ?? 0n))),
      labourCost: money(sum(costed.map(({ turn }) => turn.labourCost ?? 0n))),
      wasteCost: money(sum(products.map(({ knownWaste }) => knownWaste))),
      unknownCosts: materials.filter((cost) => cost === null).length,
      unknownLabour: costed.filter(({ turn }) => turn.labourCost === null).length,
      unknownWaste: products.reduce((count, ahead) => count + ahead.unknownWaste, 0),
    },
    flags,
  };
}

function sprayingOf(zone: string, turn: Turn, costs: (bigint | null)[]) {
  const { spray, plants } = turn;
  const material = added(costs);
  const per = (share: ReturnType<typeof fraction> | null) =>
    material === null || share === null || share.over === 0n ? null : money(rounded(over(fraction(material), share)));
  return {
    program: turn.program.id,
    recipe: turn.recipe.id,
    benches: turn.benches.map(({ id }) => id),
    date: turn.date,
    startsAt: instantText(zone, turn.startsAt),
    endsAt: instantText(zone, turn.endsAt),
    sprayMl: spray && asNumber(spray.total),
    plants,
    fills: spray && Array.from({ length: Number(spray.fills) }, () => ({ ml: asNumber(spray.fill) })),
    ingredients: turn.lines.map(({ product, amount }, at) => ({
      product: product.id,
      amount: amount === null ? null : shown(amount),
      unit: unitOf(product),
      cost: money(costs[at] ?? null),
    })),
    materialCost: money(material),
    labourCost: money(turn.labourCost),
    costPerPlant: per(fraction(BigInt(plants))),
    costPerLitre: per(spray && over(spray.total, fraction(1000n))),
    reopensAt: turn.reopensAt === null ? null : instantText(zone, turn.reopensAt),
  };
}

function productOf(file: ShopFile, ahead: Ahead, today: string) {
  const { product, offer, runsOutOn } = ahead;
  const by = runsOutOn === null || offer === null ? null : orderBy(file, offer, runsOutOn);
  return {
    product: product.id,
    unit: unitOf(product),
    onHand: shown(ahead.onHand),
    usable: shown(ahead.usable),
    weeks: ahead.weeks.map(({ need, used, short, wasted, received, closing, unknown }, at) => ({
      week: dayAfter(today, 7 * at),
      need: unknown ? null : shown(need),
      needAtLeast: shown(need),
      used: shown(used),
      short: shown(short),
      wasted: shown(wasted),
      received: shown(received),
      closing: shown(closing),
    })),
    ...{ runsOutOn, orderBy: by, unknownSince: ahead.unknownSince },
    weeksUntilReorder: by === null ? null : Math.floor(daysBetween(today, by) / 7),
    wasteCost: money(ahead.wasteCost),
  };
}
