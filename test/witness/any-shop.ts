import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { anyBench, anyLot, anyOffer, anyProduct, anyRecipe } from './any-goods';
import { dayAfter, daysBetween, daysOf } from './calendar';
import { type Pick, pickFrom } from './pick';

/* A whole shop made up from a number, the same for the same number: small, and odd in as many ways as the file allows. */

const ZONES = [
  'America/New_York',
  'Europe/Berlin',
  'UTC',
  'Australia/Lord_Howe',
  'America/St_Johns',
  'Asia/Kathmandu',
  'Pacific/Auckland',
  'America/Santiago',
];
/** Days shortly before a clock changes in one of them, and some others. */
const TODAYS = [
  '2026-03-02',
  '2026-03-23',
  '2026-10-19',
  '2026-10-28',
  '2026-09-01',
  '2026-03-30',
  '2026-12-21',
  '2026-06-29',
];
const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const HOURS: [string, string][][] = [
  [],
  [['09:00', '18:00']],
  [
    ['08:00', '12:00'],
    ['13:15', '17:30'],
  ],
  [['00:00', '03:00']],
];
const REPEATS = [
  null,
  'FREQ=DAILY',
  'FREQ=DAILY;INTERVAL=6',
  'FREQ=DAILY;INTERVAL=2;COUNT=25',
  'FREQ=WEEKLY',
  'FREQ=WEEKLY;BYDAY=TU,FR',
  'FREQ=WEEKLY;INTERVAL=2;BYDAY=SU,MO',
  'FREQ=WEEKLY;INTERVAL=3;BYDAY=SA;COUNT=8',
  'FREQ=MONTHLY;BYMONTHDAY=1,15,-1',
  'FREQ=MONTHLY;BYDAY=2TU,-1FR',
  'FREQ=MONTHLY',
  'FREQ=DAILY;INTERVAL=3;UNTIL=20261110',
  'FREQ=WEEKLY;BYDAY=SA,SU;UNTIL=20260412',
  'FREQ=DAILY;BYDAY=MO,WE,SU',
];
const TIMES = ['00:15', '01:30', '02:00', '02:10', '02:30', '03:00', '06:45', '12:00', '17:30', '23:50'];

export type AnyShop = { file: WrittenShopFile; today: string; weeks: number };

export function anyShop(seed: number): AnyShop {
  const pick = pickFrom(seed);
  const today = pick.one(TODAYS);
  const weeks = 1 + pick.below(9);
  const suppliers = pick.many(1, 2, (at) => anySupplier(pick, at, today));
  const products = pick.many(1, 4, (at) => anyProduct(pick, at));
  const benches = pick.many(1, 3, (at) => anyBench(pick, at));
  const recipes = pick.many(1, 3, (at) => anyRecipe(pick, at, products));
  const shop = anySettings(pick, today);
  const sprayers = (shop.sprayers ?? []).map(({ name }) => name);
  const file: WrittenShopFile = {
    format: 'bench-and-bottle/shop@1',
    shop,
    suppliers,
    products,
    offers: products.flatMap((product, at) =>
      pick.many(0, 3, (n) => anyOffer(pick, `${at}-${n}`, product, suppliers, today)),
    ),
    lots: products.flatMap((product, at) => pick.many(0, 4, (n) => anyLot(pick, `${at}-${n}`, product, today))),
    benches,
    recipes,
    programs: pick.many(1, 3, (at) => anyProgram(pick, at, today, { recipes, benches, sprayers })),
    applications: pick.many(0, 6, (at) => anyRecord(pick, at, today, recipes, benches)),
  };
  return { file, today, weeks };
}

type Settings = WrittenShopFile['shop'];

function anySettings(pick: Pick, today: string): Settings {
  const hours = pick.one(HOURS);
  const sprayer = {
    capacity: pick.one(['2 gal', '8 L', '1 gal', '15 L']),
    lossPerFill: pick.one(['0 mL', '100 mL', '0.25 pt']),
  };
  const step = pick.one(['0 mL', '0.5 L', '100 mL', '1 gal']);
  const plain = { fillCapacity: sprayer.capacity, lossPerFill: sprayer.lossPerFill, measuringStep: step };
  const named = {
    sprayers: [
      { name: 'Knapsack', ...sprayer, measuringStep: step },
      { name: 'Hand', capacity: '1.5 L', lossPerFill: '20 mL' },
    ],
  };
  return {
    name: `A shop made up`,
    timeZone: pick.one(ZONES),
    currency: 'USD',
    openingHours: {
      ...Object.fromEntries(WEEKDAYS.map((day) => [day, pick.chance(20) ? [] : hours])),
      mon: [['09:00', '17:00']],
    },
    specialDays: pick.many(0, 3, (at) => ({
      on: dayAfter(today, 7 * at + pick.below(7)),
      hours: pick.one([[], HOURS[1] ?? []]),
    })),
    ...(pick.chance(30) ? {} : { water: { alkalinityMgPerLCaCO3: 90 + pick.below(90), pH: 7.2 + pick.below(9) / 10 } }),
    ...(pick.chance(30) ? named : plain),
    safetyDays: pick.below(5),
    wagePerHour: pick.chance(20) ? null : `${14 + pick.below(9)}.${25 + pick.below(70)}`,
    sameModeInARow: 1 + pick.below(3),
    dropMl: pick.one([0.05, 0.04, 0.03333]),
  };
}

type Supplier = NonNullable<WrittenShopFile['suppliers']>[number];

function anySupplier(pick: Pick, at: number, today: string): Supplier {
  const closedOn = { closedOn: pick.many(0, 3, (n) => dayAfter(today, 7 * n + pick.below(7))) };
  return {
    ...{ id: `s${at}`, name: `Supplier ${at}`, archived: pick.chance(8) },
    workingDays: WEEKDAYS.filter((_, day) => day === 2 || pick.chance(60)),
    ...closedOn,
  };
}

type Named = { id: string };

function anyProgram(
  pick: Pick,
  at: number,
  today: string,
  { recipes, benches, sprayers }: { recipes: Named[]; benches: Named[]; sprayers: string[] },
) {
  const startsOn = dayAfter(today, pick.below(50) - 40);
  const repeat = pick.one(REPEATS);
  const endsOn = pick.chance(25) ? dayAfter(startsOn, 20 + pick.below(60)) : null;
  const last = dayAfter(today, 40);
  const days = daysOf(repeat, startsOn, endsOn !== null && endsOn < last ? endsOn : last);
  return {
    ...{ id: `g${at}`, startsOn, endsOn, repeat },
    sprayer: sprayers.length > 0 ? pick.one([null, ...sprayers]) : null,
    recipes: pick.many(1, 3, () => pick.one(recipes).id),
    benches: benches.filter((_, place) => place === at % benches.length || pick.chance(40)).map(({ id }) => id),
    startTime: pick.one(TIMES),
    minutes: pick.one([0, 20, 45, 90, 200]),
    changes: days
      .filter((day) => daysBetween(today, day) >= -3 && pick.chance(20))
      .map((on) => {
        const kind = pick.one(['skipped', 'done', 'moved', 'moved'] as const);
        const moved = {
          movedTo: dayAfter(on, pick.below(15) - 5),
          startTime: pick.chance(50) ? null : pick.one(TIMES),
        };
        return kind === 'moved' ? { on, kind, ...moved } : { on, kind };
      }),
  };
}

const HOUR = 3_600_000;

function anyRecord(pick: Pick, at: number, today: string, recipes: Named[], benches: Named[]) {
  const started = Date.parse(`${today}T00:00:00Z`) - pick.below(24 * 30) * HOUR - 14 * HOUR;
  const text = (instant: number) => new Date(instant).toISOString().replace('.000Z', 'Z');
  return {
    id: `a${at}`,
    recipe: pick.one(recipes).id,
    benches: benches.filter((_, place) => place === at % benches.length || pick.chance(30)).map(({ id }) => id),
    startedAt: text(started),
    endedAt: pick.chance(4) ? null : text(started + pick.below(90) * 60_000),
    withdrawn: pick.chance(10),
  };
}
