import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { judged, type SignedIn } from '@/lib/access/asker';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { demoShop } from '@/lib/demo/demo-shop';
import { doorRoute } from '@/lib/door/door-route';
import { ROLES, type Role } from '@/shared/access/roles';
import { DEVICE_SHOP } from '@/shared/device-shop';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { accept } from '@/shared/outcome';
import { Day } from '@/shared/time/day';
import { type Entry, entriesIn } from '@/test/architecture/doors';
import { readSources } from '@/test/architecture/source';
import { figure } from '@/test/promises/figure';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, closeDatabases, freshDatabase } from '../data/fresh-database';
import { ownerHere, personHere, sessionOf } from './people-here';
import { ROLES_HAVE, WAYS_IN } from './who-may-what';

/*
 * Every way into the shop, found in the source, tried by every role: in a shop of theirs, and in one where they are nobody.
 * What is sent fits no contract, so whoever is let in changes nothing.
 */

type Who = Role | 'stranger';

const sender = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/cache', () => ({ revalidatePath: () => {} }));
vi.mock('next/headers', () => ({
  headers: async () => sender.headers,
  cookies: async () => ({
    get: (name: string) => {
      const all = (sender.headers.get('cookie') ?? '').split('; ').find((one) => one.startsWith(`${name}=`));
      return all === undefined ? undefined : { value: all.slice(name.length + 1) };
    },
    set: () => {},
  }),
}));

const ENTRIES = readSources().flatMap(entriesIn);
const OURS = { host: '192.168.7.7:3000', origin: 'http://192.168.7.7:3000' };
const shops = { own: '', other: '' };
const sessions = new Map<Who, string>();

/** A way in as `who-may-what.ts` writes it. */
function written({ kind, path, name }: Entry): string {
  const place = path.replace(/^app/, '').replace(/\/?(page\.tsx|route\.ts)$/, '');
  if (kind === 'page') return place === '' ? '/' : place;
  return kind === 'route' ? `${name} ${place}` : name;
}

beforeAll(async () => {
  Object.assign(process.env, {
    HOST: '0.0.0.0',
    NETWORK: 'plain',
    NETWORK_NAMES: '192.168.7.7',
    CHANGES_PER_MINUTE: '9999',
    // Next sets it from its settings.
    __NEXT_EXPERIMENTAL_AUTH_INTERRUPTS: 'true',
  });
  await freshDatabase();
  shops.own = await newShop();
  shops.other = await newShop();
  // With an owner of both, nothing is open any more.
  vi.stubEnv('HOST', '127.0.0.1');
  await ownerHere();
  vi.unstubAllEnvs();
  for (const role of ROLES) sessions.set(role, await sessionOf(await personHere(`A ${role}`, { [shops.own]: role })));
});

afterAll(closeDatabases);

async function newShop(): Promise<string> {
  const file = parsedOrThrow(demoShop(Day.parse('2026-03-31')));
  const made = await importShopFile({ commandId: newId(), file, into: { isDemo: false } }, CLOCK);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  return made.value.shopId;
}

beforeEach(() => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
});

/** Ask as somebody, on a device that works in a shop. */
function as(who: Who, shop: string): void {
  const cookies = [sessions.get(who) ?? '', `${DEVICE_SHOP}=${shop}`].filter((one) => one !== '');
  const form = { 'content-length': '9', 'content-type': 'multipart/form-data; boundary=x' };
  sender.headers = new Headers({ ...OURS, ...form, cookie: cookies.join('; ') });
}

type Action = (state: FormState, form: FormData) => Promise<FormState>;
type Route = (request: Request) => Promise<Response>;
type Page = (props: object) => Promise<unknown>;
type Door = Action & Route & Page;

type Answer = 'in' | 'sign in' | 'not allowed';

/** What a door answers to somebody who sends what fits no contract and names a shop. */
async function tried(entry: Entry, who: Who, shop: string): Promise<Answer> {
  as(who, shop);
  const module = await vi.importActual<Record<string, Door>>(join(process.cwd(), entry.path));
  const door = module[entry.name];
  if (!door) throw new Error(`${entry.path} has no ${entry.name}`);
  if (entry.kind === 'action') return ofAction(door, shop);
  return entry.kind === 'route' ? ofRoute(door, entry, shop) : ofPage(door);
}

async function ofAction(action: Action, shop: string): Promise<Answer> {
  const form = new FormData();
  form.set('shop', shop);
  form.set('no field of any form', 'x');
  const state = await action(IDLE, form);
  const said = state.status === 'idle' ? '' : state.message;
  if (said.startsWith('Your sign-in does not allow this')) return 'not allowed';
  return said.startsWith('Nobody is signed in here') ? 'sign in' : 'in';
}

async function ofRoute(door: Route, { name, path }: Entry, shop: string): Promise<Answer> {
  const place = path.replace(/^app/, '').replace(/\/route\.ts$/, '');
  const headers = new Headers(sender.headers);
  headers.set('content-type', path.includes('/sheet/') ? 'application/pdf' : 'application/json');
  headers.delete('content-length');
  const asked = new URLSearchParams({ shop, 'no field of any question': 'x' });
  const body = name === 'POST' ? { body: '{}', duplex: 'half' } : {};
  const answer = await door(
    new Request(`http://192.168.7.7:3000${place}?${asked}`, { method: name, headers, ...body }),
  );
  await answer.body?.cancel();
  if (answer.status === 403) return 'not allowed';
  return answer.status === 401 ? 'sign in' : 'in';
}

async function ofPage(page: Page): Promise<Answer> {
  const never = () => Promise.reject(new Error('a page that was let in'));
  const props = {
    get params() {
      return never();
    },
    get searchParams() {
      return never();
    },
  };
  try {
    await page(props);
    return 'in';
  } catch (thrown) {
    const digest = String(Reflect.get(Object(thrown), 'digest'));
    if (digest.includes('403')) return 'not allowed';
    return digest.includes('/sign-in?to=') ? 'sign in' : 'in';
  }
}

test('every way in stands in the table, under what it asks', () => {
  const asked = Object.fromEntries(Object.keys(WAYS_IN).map((may) => [may, [] as string[]]));
  for (const entry of ENTRIES) asked[String(entry.may)]?.push(written(entry));
  const sorted = (table: Record<string, readonly string[]>) =>
    Object.fromEntries(Object.entries(table).map(([may, ways]) => [may, [...ways].sort()]));
  expect(sorted(asked)).toEqual(sorted(WAYS_IN));
  expect(new Set(ENTRIES.map(written)).size).toBe(ENTRIES.length);
});

const ALL: Who[] = [...ROLES, 'stranger'];

afterAll(() => figure(22, `${ENTRIES.length} ways in, each as ${ALL.length} kinds of people: as the table says`));

test.each(ENTRIES.filter(({ kind }) => kind !== 'page').map((entry) => [written(entry), entry] as const))(
  '%s is open to those it is for, in their own shop alone',
  async (way, entry) => {
    const needed = Object.entries(WAYS_IN).find(([, ways]) => ways.includes(way))?.[0] ?? '';
    for (const who of ALL) {
      const isTheirs = ROLES_HAVE[who].some((may) => may === needed);
      const otherwise = who === 'stranger' ? 'sign in' : 'not allowed';
      expect({ who, answer: await tried(entry, who, shops.own) }).toEqual({ who, answer: isTheirs ? 'in' : otherwise });
      // What is for anybody asks for no shop.
      const isForAnybody = ['open', 'link', 'machine'].includes(needed) && isTheirs;
      expect({ who, answer: await tried(entry, who, shops.other) }).toEqual({
        who,
        answer: isForAnybody ? 'in' : otherwise,
      });
    }
  },
);

test('a page leads a stranger to sign in and back, and tells others that it is not for them', async () => {
  for (const entry of ENTRIES.filter(({ path }) =>
    /^app\/(log|setup\/rules|keep-out|sign-in)\/page\.tsx$/.test(path),
  )) {
    for (const who of ALL) {
      const isTheirs = ROLES_HAVE[who].some((may) => may === entry.may);
      const otherwise = who === 'stranger' ? 'sign in' : 'not allowed';
      const answer = await tried(entry, who, shops.own);
      expect({ who, path: entry.path, answer }).toEqual({ who, path: entry.path, answer: isTheirs ? 'in' : otherwise });
    }
  }
});

test('a shop that stands in the body alone is asked for, too', async () => {
  const body = z.strictObject({ shop: z.string() });
  const done = vi.fn(async () => accept({ done: true }));
  const door = doorRoute({ may: 'spray', query: z.strictObject({}), body }, done);
  const send = async (who: Who, device: string, shop: string) => {
    as(who, device);
    const headers = new Headers({
      ...OURS,
      cookie: sender.headers.get('cookie') ?? '',
      'content-type': 'application/json',
    });
    const request = new Request('http://192.168.7.7:3000/api/v1/x', {
      method: 'POST',
      headers,
      body: JSON.stringify({ shop }),
    });
    return (await door(request)).status;
  };
  expect(await send('sprayer', shops.own, shops.other)).toBe(403);
  expect(await send('inspector', shops.own, shops.own)).toBe(403);
  expect(await send('stranger', shops.own, shops.own)).toBe(401);
  expect(done).not.toHaveBeenCalled();
  expect(await send('sprayer', shops.other, shops.own)).toBe(200);
});

test('what takes a role takes it in each shop that is named', () => {
  const person: SignedIn = {
    id: 'p',
    name: 'Bo',
    sessionId: 's',
    deviceId: 'd',
    roles: new Map([
      ['a', 'owner'],
      ['b', 'floor'],
    ]),
  };
  const asker = { kind: 'person', person } as const;
  expect(judged(asker, 'grow', ['a'])).toBeNull();
  for (const named of [['b'], ['a', 'b'], ['a', 'c'], ['c']]) {
    expect(judged(asker, 'grow', named)).toEqual({ code: 'not-allowed', needs: ['Owner', 'Grower'] });
  }
  expect(judged(asker, 'see-board', ['a', 'b'])).toBeNull();
  expect(judged(asker, 'grow', [])).toBeNull();
});
