import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openApi } from '@/shared/api/open-api';
import { freePort } from '../run/free-port.js';
import { mixOf } from './one-bottle';
import { commandId, type Served, serve } from './served';

/*
 * Several shops in one database, and a person who looks at one of them. Whatever page or route is asked, with ids of
 * another shop too, no word of another shop may come out, and nothing of it may change. The pages are listed from the
 * folder of the app, the routes from their description, so a new one is asked as well.
 */

const MARK = 'Foreign';
const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'separate-'));

type Things = Record<
  'supplier' | 'product' | 'offer' | 'lot' | 'bench' | 'recipe' | 'program' | 'application' | 'order',
  string
>;

const idsOf = (prefix: string): Things => ({
  ...{
    supplier: `${prefix}-s`,
    product: `${prefix}-p`,
    offer: `${prefix}-o`,
    lot: `${prefix}-l`,
    bench: `${prefix}-b`,
  },
  ...{ recipe: `${prefix}-r`, program: `${prefix}-g`, application: `${prefix}-a`, order: `${prefix}-d` },
});

/** A shop with one thing of each kind, in which every text but the shop's own name begins with a mark. */
const shopOf = (name: string, of: Things, mark: string) => ({
  format: 'bench-and-bottle/shop@1',
  shop: { name, timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal', address: `${mark} lane` },
  suppliers: [{ id: of.supplier, name: `${mark} supplier` }],
  products: [{ id: of.product, name: `${mark} soap`, kind: 'insecticide', form: 'liquid', label: { reiHours: 4 } }],
  offers: [{ id: of.offer, supplier: of.supplier, product: of.product, pack: '500 mL', price: '40.00', leadDays: 3 }],
  lots: [
    { id: of.lot, product: of.product, pack: '4 L', paid: '74.00', receivedOn: '2026-02-02', openedOn: '2026-02-03' },
  ],
  benches: [{ id: of.bench, name: `${mark} bench`, plants: [{ name: `${mark} ferns`, count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: of.recipe, name: `${mark} wash`, ingredients: [{ product: of.product, dose: '12 mL/gal' }] }],
  programs: [
    {
      id: of.program,
      recipes: [of.recipe],
      benches: [of.bench],
      startsOn: '2026-03-03',
      startTime: '17:30',
      minutes: 45,
    },
  ],
  applications: [
    {
      id: of.application,
      recipe: of.recipe,
      benches: [of.bench],
      startedAt: '2026-02-24T22:30:00Z',
      endedAt: '2026-02-24T23:00:00Z',
      by: `${mark} person`,
    },
  ],
  orders: [
    {
      id: of.order,
      supplier: of.supplier,
      placedOn: '2026-03-02',
      lines: [{ offer: of.offer, count: 1 }],
      note: `${mark} note`,
    },
  ],
});

const [own, other] = [idsOf('own'), idsOf('other')];
let server: Served;
/** The shop that is looked at; one with other ids; and one with the very same ids and other words. */
const shops = { own: '', other: '', twin: '' };

beforeAll(async () => {
  server = await serve(folder, await freePort(), { BENCH_CLOCK: '2026-03-10T15:00:00Z' });
  shops.own = await bringIn(shopOf('One shop', own, 'Own'));
  shops.other = await bringIn(shopOf('Another shop', other, MARK));
  shops.twin = await bringIn(shopOf('A twin', own, MARK));
}, 120_000);

afterAll(async () => {
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function bringIn(shop: object): Promise<string> {
  const sent = { commandId: commandId(), into: 'new', text: JSON.stringify(shop) };
  const { status, body } = await server.post('/api/v1/shop/import', sent);
  expect(status, JSON.stringify(body)).toBe(200);
  return String((body as { shopId: unknown }).shopId);
}

/** Ask as a browser does that looks at the first shop. */
async function asked(path: string): Promise<{ status: number; text: string }> {
  const answer = await fetch(`${server.url}${path}`, {
    headers: { Cookie: `shown-shop=${shops.own}` },
    redirect: 'manual',
  });
  return { status: answer.status, text: await answer.text() };
}

/** Every address of a page or of a route beside the API, with its variable parts. */
const addresses = readdirSync(join(root, 'app'), { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /(^|\/)(page\.tsx|route\.ts)$/.test(name) && !name.startsWith('api/'))
  .map((name) => `/${name.replace(/\/?(page\.tsx|route\.ts)$/, '')}`)
  .sort();

/** An address with the ids of some shop in its variable parts, and in whatever a page may be asked. */
function filled(address: string, of: Things): string {
  const parts: Record<string, string> = { ...of, place: '1', token: 'none' };
  const path = address.replace(/\[(\w+)\]/g, (_, name: string) => parts[name] ?? 'none');
  const query = new URLSearchParams({ ...of, volume: '2 gal', q: MARK, day: '2026-03-10' });
  return `${path}?${query}`;
}

test('no page shows a word of another shop, whatever ids it is asked for', { timeout: 300_000 }, async () => {
  expect(addresses.length).toBeGreaterThan(50);
  let shown = 0;
  for (const address of addresses) {
    for (const of of [own, other]) {
      const { status, text } = await asked(filled(address, of));
      expect(status, address).toBeLessThan(500);
      // What was searched for is written into its field again.
      const said = text.replaceAll(`value="${MARK}"`, '').replaceAll(/q=Foreign/g, '');
      expect({ address, of: of.product, leak: leaked(said) }).toEqual({ address, of: of.product, leak: null });
      if (status === 200) shown += 1;
    }
  }
  expect(shown).toBeGreaterThan(addresses.length);
});

/** The words of another shop in a text, with what stands around them. */
const leaked = (text: string): string | null =>
  /.{0,60}Foreign (soap|supplier|bench|ferns|wash|person|note|lane).{0,40}/.exec(text)?.[0] ?? null;

test('no route of the API answers with a word of another shop', { timeout: 300_000 }, async () => {
  const values: Record<string, string> = { volume: '2 gal', list: 'products', text: MARK, seconds: '1' };
  let count = 0;
  const paths: Record<string, { get?: { parameters: { name: string }[] }; post?: object }> = openApi().paths;
  for (const [path, { get }] of Object.entries(paths)) {
    if (!get) continue;
    for (const of of [own, other]) {
      const known: Record<string, string> = {
        ...of,
        ...values,
        shop: shops.own,
        figure: `product/${of.product}/runsOut`,
      };
      const names = get.parameters.map(({ name }) => name).filter((name) => name in known);
      const query = new URLSearchParams(names.map((name) => [name, known[name] ?? '']));
      const { status, text } = await asked(`/api/v1${path}?${query}`);
      expect(status, path).toBeLessThan(500);
      expect({ path, leak: leaked(text) }).toEqual({ path, leak: null });
      count += 1;
    }
  }
  expect(count).toBeGreaterThan(30);
});

test('a mix of one shop never takes from another: any one id of the other is refused, and nothing changes there', async () => {
  const exported = async () => Promise.all([shops.other, shops.twin].map((id) => asked(`/api/v1/shop?shop=${id}`)));
  const before = await exported();
  expect(before[0]?.text).toContain(MARK);
  const mix = (of: Partial<Things>) => {
    const ids = { ...own, ...of };
    const poured = [{ product: ids.product, from: [{ lotId: ids.lot, place: 0, amount: '7 mL' }] }];
    return { ...mixOf(shops.own), recipe: ids.recipe, benches: [ids.bench], poured };
  };
  for (const kind of ['product', 'lot', 'bench', 'recipe'] as const) {
    const { status, body } = await server.post('/api/v1/mix/finish', mix({ [kind]: other[kind] }));
    expect([kind, status >= 400 && status < 500, leaked(JSON.stringify(body))]).toEqual([kind, true, null]);
  }
  expect((await server.post('/api/v1/mix/finish', mix({}))).status).toBe(200);
  expect(await exported()).toEqual(before);
});
