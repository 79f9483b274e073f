import { randomBytes } from 'node:crypto';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { showShopAction, startShopAction } from '@/app/setup/actions';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { askedShop } from '@/lib/views/asked-shop';
import { keepOutBoard } from '@/lib/views/keep-out-board';
import { shopsAndShown } from '@/lib/views/shown-shop';
import { IDLE } from '@/shared/forms/form-state';
import { parseShopFile } from '@/shared/shop-file/parse';
import { runs } from '@/test/runs';
import { CLOCK, closeDatabases, freshDatabase } from '../data/fresh-database';

type Jar = Map<string, { value: string }>;

/** The device that asks now: its cookies, and what its browser sends with every form. */
const device = vi.hoisted(() => ({ jar: new Map() as Jar, headers: new Headers() }));
vi.mock('next/cache', () => ({ revalidatePath: () => {} }));
vi.mock('next/headers', () => ({
  headers: async () => device.headers,
  cookies: async () => ({
    get: (name: string) => device.jar.get(name),
    set: (name: string, value: string) => device.jar.set(name, { value }),
  }),
}));

const DEVICES = 3;

type Step =
  | { does: 'visit'; device: number }
  | { does: 'restart'; device: number }
  | { does: 'import'; device: number; into: number | null }
  | { does: 'start'; device: number; here: 'yes' | 'no' }
  | { does: 'choose'; device: number; shop: number };

const deviceNumber = fc.nat(DEVICES - 1);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ does: fc.constant('visit' as const), device: deviceNumber }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('restart' as const), device: deviceNumber }) },
  {
    weight: 2,
    arbitrary: fc.record({
      does: fc.constant('import' as const),
      device: deviceNumber,
      into: fc.option(fc.nat(3)),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      does: fc.constant('start' as const),
      device: deviceNumber,
      here: fc.constantFrom('yes' as const, 'no' as const),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ does: fc.constant('choose' as const), device: deviceNumber, shop: fc.nat(3) }),
  },
);

/** What this test knows of each device by itself: the shop it was given, or null as long as it was given none. */
type Known = { given: (string | null)[]; jars: Jar[]; shops: string[]; made: number };

test('the shop of a device changes by its own choice and by nothing else', { timeout: 600_000 }, async () => {
  process.env.CHANGES_PER_MINUTE = '100000';
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 10 }), async (steps) => {
      await freshDatabase();
      const known: Known = { given: Array(DEVICES).fill(null), jars: [], shops: [], made: 0 };
      for (let one = 0; one < DEVICES; one += 1) known.jars.push(new Map());
      try {
        for (const one of steps) {
          await take(one, known);
          await everyDeviceIsWhereItWas(known);
        }
      } finally {
        await closeDatabases();
      }
    }),
    { numRuns: runs(12, 1000) },
  );
});

async function take(one: Step, known: Known): Promise<void> {
  use(known, one.device);
  if (one.does === 'visit') return visit(known, one.device);
  if (one.does === 'restart') return (await database()).close();
  known.made += 1;
  const commandId = commandIdHere();
  if (one.does === 'import') {
    const shopId = one.into === null ? undefined : known.shops[one.into];
    // A file for a shop that is there needs its fingerprint; a refused one must move nobody either.
    const into = shopId === undefined ? { isDemo: false } : { shopId, fingerprint: 'of another state' };
    const outcome = await importShopFile({ commandId, file: fileNamed(`Shop ${known.made}`), into }, CLOCK);
    if (outcome.ok && shopId === undefined) known.shops.push(outcome.value.shopId);
    return;
  }
  if (one.does === 'start') {
    const typed = { commandId, name: `Shop ${known.made}`, timeZone: 'UTC', currency: 'USD', units: 'us' };
    const said = await startShopAction(IDLE, form({ ...typed, fillCapacity: '2 gal', here: one.here }));
    expect(said).toMatchObject({ status: 'done' });
    const added = (await shopsAndShown()).shops.filter(({ id }) => !known.shops.includes(id)).map(({ id }) => id);
    expect(added).toHaveLength(1);
    known.shops.push(...added);
    if (one.here === 'yes') known.given[one.device] = added[0] ?? null;
    return;
  }
  const shop = known.shops[one.shop];
  const answer = await showShopAction(IDLE, form({ shop: shop ?? 'of another database' }));
  expect(answer.status).toBe(shop === undefined ? 'refused' : 'done');
  if (shop !== undefined) known.given[one.device] = shop;
}

/** Somebody opens a page: a device that was given no shop gets the only one there is, and is asked where there are several. */
async function visit(known: Known, at: number): Promise<void> {
  const { remember } = await shopsAndShown();
  // What the page has its browser remember.
  if (remember !== null) device.jar.set('shown-shop', { value: remember });
  if (known.given[at] === null && known.shops.length === 1) known.given[at] = known.shops[0] ?? null;
}

async function everyDeviceIsWhereItWas(known: Known): Promise<void> {
  for (const [at, given] of known.given.entries()) {
    use(known, at);
    const { shown, isAsked } = await shopsAndShown();
    const several = known.shops.length > 1;
    const expected = given ?? (several ? null : (known.shops[0] ?? null));
    expect({ shown: shown?.id ?? null, isAsked }).toEqual({ shown: expected, isAsked: given === null && several });
    const asked = await askedShop(undefined);
    expect(asked.ok ? asked.value.id : null).toBe(expected);
    const board = await keepOutBoard(CLOCK);
    expect(board?.shop ?? null).toBe(shown?.name ?? null);
  }
}

function use(known: Known, at: number): void {
  device.jar = known.jars[at] ?? new Map();
  const ours = { host: '127.0.0.1:3000', origin: 'http://127.0.0.1:3000' };
  device.headers = new Headers({ ...ours, 'content-length': '9', 'content-type': 'multipart/form-data; boundary=x' });
}

function form(fields: Record<string, string>): FormData {
  const filled = new FormData();
  for (const [name, value] of Object.entries(fields)) filled.set(name, value);
  return filled;
}

function fileNamed(name: string) {
  const shop = { name, timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal' };
  const lists = ['suppliers', 'products', 'offers', 'lots', 'benches', 'recipes', 'programs', 'applications'];
  const empty = Object.fromEntries(lists.map((list) => [list, []]));
  const parsed = parseShopFile(JSON.stringify({ format: 'bench-and-bottle/shop@1', shop, ...empty }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.file;
}

test('a program that names no shop is told which there are, and gets none of them', async () => {
  await freshDatabase();
  device.jar = new Map();
  for (const name of ['One', 'Two']) {
    await importShopFile({ commandId: commandIdHere(), file: fileNamed(name), into: { isDemo: false } }, CLOCK);
  }
  const asked = await askedShop(undefined);
  expect(asked).toMatchObject({
    ok: false,
    refusal: { code: 'which-shop', shops: [{ name: 'One' }, { name: 'Two' }] },
  });
});

const commandIdHere = () => randomBytes(16).toString('hex');
