import { type Micros, minutes, type Stock } from '@/shared/quantity/amounts';
import { ofEach } from '@/shared/quantity/rounding';
import { addDays, type Day } from '@/shared/time/day';
import { dayOf } from '@/shared/time/zone';
import { account, type Carried } from '../ledger/account';
import { lastUsableDay } from '../ledger/last-usable-day';
import type { Movement, Side } from '../ledger/movement';
import { TO_ENTER_WAGE, type ToEnter, toEnterForPrice } from '../rules/to-enter';
import type { Application, Container, Product, Shop } from '../shop';
import { valueLeft } from '../working/container-figures';
import type { Piece } from './budget-line';

/** A bottle with everything that ever moved, and which of that belongs to which record. */
export type Booked = {
  lot: string;
  place: number;
  product: string;
  packText: string;
  size: Stock;
  paid: Micros | null;
  movements: Movement[];
  /** Movements that say what was gone before the books began: nobody knows when, so they are in no month. */
  gone: ReadonlySet<string>;
  /** The record of a movement, by its id. */
  records: ReadonlyMap<string, string>;
};

/**
 * What was really spent: what left the bottles day by day at what was paid for it, what died in them, and the work.
 *
 * What went into a mix counts for its record; a record of which no bottle knows counts with the cost that it says
 * itself, and is unknown where it says none. What was thrown away counts on that day, what stands there past its last
 * usable day on the day after that. What went back to a supplier cost nothing, and what was gone before the books began
 * is in none of it.
 *
 * Units    whole micros
 */
export function spentIn(shop: Shop, booked: readonly Booked[], today: Day): Piece[] {
  const products = new Map(shop.products.map((product) => [product.id, product]));
  const records = new Map(shop.applications.map((one) => [one.id, one]));
  const programOf = programsBy(shop);
  const moved = booked.flatMap((bottle) => {
    const product = products.get(bottle.product);
    return product ? movedOut(shop, bottle, product, records, programOf) : [];
  });
  const known = new Set(booked.flatMap((bottle) => [...bottle.records.values()]));
  const told = shop.applications.filter(({ id, withdrawn }) => !known.has(id) && !withdrawn);
  return [
    ...moved,
    ...told.map((record) => toldCost(shop, record, programOf(record))),
    ...shop.applications.filter(({ withdrawn }) => !withdrawn).map((one) => workOf(shop, one, programOf(one))),
    ...shop.applications.filter(({ withdrawn }) => !withdrawn).flatMap((one) => plannedThen(shop, one, programOf(one))),
    ...expiredIn(shop, today),
  ];
}

type ProgramOf = (record: Application) => string | null;

/** The program of a record: the one that says so, or else the only one that sprays this recipe on these benches. */
function programsBy({ programs }: Pick<Shop, 'programs'>): ProgramOf {
  const said = new Map(programs.flatMap(({ id, changes }) => changes.map(({ application }) => [application, id])));
  const found = new WeakMap<Application, string | null>();
  return (record) => {
    const known = found.get(record);
    if (known !== undefined) return known;
    const own = said.get(record.id) ?? onlyFit(programs, record);
    found.set(record, own);
    return own;
  };
}

function onlyFit(programs: Shop['programs'], { recipe, benches }: Application): string | null {
  const fit = programs.filter(
    (one) => one.recipes.some(({ id }) => id === recipe.id) && benches.every((bench) => one.benches.includes(bench)),
  );
  return fit.length === 1 ? (fit[0]?.id ?? null) : null;
}

function movedOut(
  shop: Shop,
  bottle: Booked,
  product: Product,
  records: ReadonlyMap<string, Application>,
  programOf: ProgramOf,
): Piece[] {
  const { paid, size, movements } = bottle;
  // A bottle without a price still moves; what left it is unknown, and not nothing.
  const carried: (Omit<Carried, 'cost'> & { cost: Micros | null })[] =
    paid === null
      ? movements.map((movement) => ({ movement, cost: null, out: movement.from === 'container' }))
      : account(paid, size, movements).carried;
  return carried.flatMap(({ movement, cost, out }): Piece[] => {
    if (bottle.gone.has(movement.id)) return [];
    const side = out ? movement.to : movement.from;
    const record = records.get(recordOf(bottle, movement) ?? '');
    const named = namedBy(side, record);
    if (!named) return [];
    const signed = cost === null || out ? cost : -cost;
    return [
      {
        ...{ side: 'actual', kind: named.kind, on: dayOf(shop.zone, movement.occurredAt), cost: signed, product },
        what: `${product.name}: ${named.what}${out ? '' : ', taken back'}`,
        piece: `movement ${movement.id}`,
        toEnter: paid === null ? [toEnterForBottle(bottle, product)] : [],
        ...{ program: record ? programOf(record) : null, benches: record?.benches ?? [] },
      },
    ];
  });
}

/** What was paid for a bottle that may be empty by now. */
const toEnterForBottle = ({ lot, place, packText }: Booked, product: Product): ToEnter => ({
  ...toEnterForPrice({ lot, place, packText, product }),
  at: { of: 'bottle', lotId: lot, place },
});

/** The record of a movement, or of the one that it takes back. */
const recordOf = ({ records }: Booked, { id, reverses }: Movement): string | undefined =>
  records.get(id) ?? (reverses === null ? undefined : records.get(reverses));

function namedBy(side: Side, record: Application | undefined): Pick<Piece, 'kind' | 'what'> | null {
  switch (side) {
    case 'spray':
      return { kind: 'product', what: record ? record.recipe.name : 'drawn without a record' };
    case 'waste':
      return { kind: 'waste', what: 'thrown away' };
    case 'count':
      return { kind: 'product', what: 'missing at a count' };
    default:
      return null;
  }
}

const about = (shop: Shop, record: Application, program: string | null) => ({
  ...{ side: 'actual' as const, on: dayOf(shop.zone, record.startedAt), product: null, program },
  benches: record.benches,
});

const toldCost = (shop: Shop, record: Application, program: string | null): Piece => ({
  ...about(shop, record, program),
  ...{
    kind: 'product',
    cost: record.cost,
    what: `${record.recipe.name}: ${record.cost === null ? 'no bottle and no cost noted' : 'as its record says'}`,
  },
  piece: `record ${record.id}`,
});

/** From its start to its end, at the wage of today. */
function workOf(shop: Shop, record: Application, program: string | null): Piece {
  const { wagePerHour } = shop;
  const { startedAt, endedAt } = record;
  const spent = endedAt === null ? null : wholeMinutes(endedAt - startedAt);
  const cost = wagePerHour === null || spent === null ? null : ofEach(wagePerHour, minutes(spent), minutes(60));
  return {
    ...about(shop, record, program),
    ...{ kind: 'labour', cost, what: `work: ${record.recipe.name}`, piece: `work ${record.id}` },
    toEnter: [
      ...(wagePerHour === null ? [TO_ENTER_WAGE] : []),
      ...(spent === null ? [{ words: NO_END, at: { of: 'record' as const, id: record.id } }] : []),
    ],
  };
}

const NO_END = 'Enter when the spraying ended.';

const wholeMinutes = (milliseconds: number): number => (milliseconds - (milliseconds % 60_000)) / 60_000;

/**
 * What it was to cost: its product as it was noted, unknown where it was not; and the minutes of its program at the wage,
 * where it belongs to one.
 */
function plannedThen(shop: Shop, record: Application, programId: string | null): Piece[] {
  const { name } = record.recipe;
  const of = { ...about(shop, record, programId), side: 'foreseen' as const };
  const said = record.plannedCost === null ? 'what it was to cost was never noted' : 'as it was planned';
  const product = { kind: 'product' as const, what: `${name}: ${said}`, piece: `planned ${record.id}` };
  const program = shop.programs.find(({ id }) => id === programId);
  const wage = shop.wagePerHour;
  const labour: Piece[] = program
    ? [
        {
          ...{ ...of, kind: 'labour', what: `work: ${name}, by its program`, piece: `planned work ${record.id}` },
          cost: wage === null ? null : ofEach(wage, program.duration, minutes(60)),
          toEnter: wage === null ? [TO_ENTER_WAGE] : [],
        },
      ]
    : [];
  return [{ ...of, ...product, cost: record.plannedCost }, ...labour];
}

/** What stands on the shelf past its last usable day. */
const expiredIn = ({ containers }: Shop, today: Day): Piece[] =>
  containers.flatMap((container: Container): Piece[] => {
    const last = lastUsableDay(container);
    if (last === null || last >= today || container.remaining === 0 || container.receivedOn > today) return [];
    const { product, lot, place } = container;
    return [
      {
        ...{ side: 'actual', kind: 'waste', on: addDays(last, 1), cost: valueLeft(container), product, program: null },
        toEnter: container.paid === null ? [toEnterForPrice(container)] : [],
        ...{ benches: [], what: `${product.name}: past its last usable day`, piece: `expired ${lot} ${place}` },
      },
    ];
  });
