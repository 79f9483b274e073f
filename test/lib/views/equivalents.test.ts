import { beforeEach, expect, test, vi } from 'vitest';
import { switchProductAction } from '@/app/buy/equivalents/actions';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import type { Working } from '@/lib/engine/working/shown';
import { type CandidateSeen, type EquivalentsScreen, equivalentsScreen } from '@/lib/views/equivalents';
import { type SeasonCurve, seasonCurve } from '@/lib/views/season-curve';
import { standInsScreen } from '@/lib/views/stand-ins';
import type { LineTo } from '@/lib/views/switch-ahead';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { shopWith, type Written } from '../../worked/plan-of';
import { smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { moneyIn, openAll, opened } from './opened-figures';

const OURS = {
  host: '127.0.0.1:3000',
  origin: 'http://127.0.0.1:3000',
  'content-type': 'multipart/form-data; boundary=x',
};
vi.mock('next/headers', () => ({
  cookies: async () => ({ get: () => undefined }),
  headers: async () => new Headers({ ...OURS, 'content-length': '9' }),
}));
vi.mock('next/cache', () => ({ revalidatePath: () => {} }));
vi.mock('@/lib/solver/on-thread', async () => ({ onThread: (await import('./in-process')).inProcess }));

beforeEach(() => {
  // The action asks the clock of the house, which then shows what that of the tests does.
  vi.stubEnv('BENCH_CLOCK', '2026-03-31T09:00:00Z');
  return () => vi.unstubAllEnvs();
});

/*
 * Ten litres on each of 52 Mondays from 6 April 2026, with 60 mg/L of an active: 12 mL/L of a half-percent ready-made, or
 * 0.5 mL/L of a twelve-percent concentrate. A third one's label stops below the dose it would take.
 */
const rates = (max: string) => ({ rates: [{ use: 'ornamentals', min: null, max }], reiHours: 4, modes: ['IRAC 5'] });
const active = (amount: number) => [{ substance: 'Spinosad', amount, basis: 'g/L' as const }];
const insecticide = { kind: 'insecticide' as const, form: 'liquid' as const, shelfLife: { openedDays: 365 } };

const SHOP = shopWith({
  shop: { capitalPerYear: 0, safetyDays: 0 },
  suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '10.00' }],
  products: [
    { ...insecticide, id: 'half', name: 'Half', contents: active(5), label: rates('20 mL/L') },
    { ...insecticide, id: 'twelve', name: 'Twelve', contents: active(120), label: rates('1 mL/L') },
    { ...insecticide, id: 'weak', name: 'Weak', contents: active(10), label: rates('4 mL/L') },
  ],
  offers: [
    { id: 'half-1', supplier: 's', product: 'half', pack: '1 L', price: '20.00', leadDays: 2 },
    { id: 'twelve-1', supplier: 's', product: 'twelve', pack: '1 L', price: '240.00', leadDays: 2 },
  ],
  lots: [{ id: 'l', product: 'half', pack: '1 L', paid: '30.00', receivedOn: '2026-03-02' }],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
  recipes: [{ id: 'r', name: 'Thrips', ingredients: [{ product: 'half', dose: '12 mL/L', use: 'ornamentals' }] }],
  programs: [
    {
      ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-04-06', startTime: '08:00', minutes: 10 },
      repeat: 'FREQ=WEEKLY;BYDAY=MO',
    },
  ],
});

async function compared(more: Partial<Written> = {}, product = 'half'): Promise<EquivalentsScreen> {
  await smallShop(parsedOrThrow({ ...SHOP, ...more }));
  return looked(product);
}

async function looked(product: string): Promise<EquivalentsScreen> {
  const screen = await equivalentsScreen(CLOCK, { recipe: 'r', product });
  if (!screen) throw new Error('there is something to compare');
  return screen;
}

function candidate({ candidates }: EquivalentsScreen, id: string): CandidateSeen {
  const found = candidates.find((one) => one.id === id);
  if (!found) throw new Error(`there is no candidate ${id}`);
  return found;
}

const dollars = (amount: number) => ({ kind: 'money', micros: Math.round(amount * 1_000_000) });

async function curveOf(screen: EquivalentsScreen): Promise<SeasonCurve> {
  const curve = await seasonCurve({ shop: screen.shopId, recipe: 'r', product: screen.product.id }, CLOCK);
  if (!curve.ok) throw new Error(JSON.stringify(curve.refusal));
  return curve.value;
}

test('each candidate at its equal dose, on three bases, allowed or not and why', async () => {
  const screen = await compared();
  const [half, twelve, weak] = ['half', 'twelve', 'weak'].map((id) => candidate(screen, id));
  expect([half, twelve, weak].map((one) => [one?.dose.value, one?.allowed, one?.isBest])).toEqual([
    [{ kind: 'ratio', value: 12, unit: 'mL/L' }, true, true],
    [{ kind: 'ratio', value: 0.5, unit: 'mL/L' }, true, false],
    [{ kind: 'ratio', value: 6, unit: 'mL/L' }, false, false],
  ]);
  // 20.00 for 5 g and 240.00 for 120 g; 12 mL of a litre for 20.00 and half a mL of one for 240.00.
  expect([half, twelve].map((one) => [one?.perGram.value, one?.perLitre.value])).toEqual([
    [dollars(4), dollars(0.24)],
    [dollars(2), dollars(0.12)],
  ]);
  // 52 × 120 mL are 6.24 L. Seven litres in one order of 10.00 are 150.00 with capital for nothing; of the seventh, opened
  // on 8 March 2027, 760 mL are left and all of it will be used in its year: 15.20.
  expect(half?.season.value).toEqual(dollars(140 + 10 - 15.2));
  // Of a litre of the concentrate 260 mL are used in a year; what is left on 29 March is of use for 8 days more, at
  // 260 ÷ 364 mL a day.
  expect(twelve?.season.value).toEqual(dollars(240 + 10 - (240 * ((260 / 364) * 8)) / 1000));
  expect(weak?.season.value.kind).toBe('unknown');
  expect(weak?.reasons[0]).toMatch(/its label allows up to 4 mL\/L/);
});

test('what a season costs is the sum of its steps, as planned, at another use, and where the order turns', async () => {
  const screen = await compared();
  const curve = await curveOf(screen);
  expect(curve.names).toEqual(['Half', 'Twelve']);
  const planned = curve.rows.filter(({ isPlanned }) => isPlanned);
  // As planned the curve has the very figures that stand with the candidates.
  expect(planned.map(({ spray, costs }) => [spray.value, costs])).toEqual([
    [{ kind: 'volume', ml: 520_000 }, [candidate(screen, 'half').season, candidate(screen, 'twelve').season]],
  ]);
  const workings = await openAll(CLOCK, [screen, curve]);
  const seasons = [...workings].filter(([at]) => /\/(season|at\/\d+|(before|behind)\/\w+)$/.test(at));
  expect(seasons.length).toBeGreaterThan(20);
  for (const [at, working] of seasons) {
    if (working.value.kind === 'unknown') continue;
    const step = (label: string) => moneyIn(working.steps.find((one) => one.label === label) ?? working);
    const total = step('Packs') + step('Freight') + step('Money tied up') - step('Left, and still to be used');
    expect([at, total]).toEqual([at, moneyIn(working)]);
    const packs = working.steps.filter(({ label }) => label.startsWith('Of the packs')).map(moneyIn);
    expect(packs.reduce((sum, one) => sum + one, 0)).toBe(step('Packs'));
  }
  turnsWhereAsMuch(screen, workings);
});

/** Where the order turns one costs as much as the other; a little nearer to the plan the first was still the cheaper. */
function turnsWhereAsMuch({ turns: [turn] }: EquivalentsScreen, workings: Map<string, Working>): void {
  expect(turn).toMatchObject({ isAbove: true, cheaper: 'Twelve', than: 'Half' });
  const { value, steps } = workings.get(turn?.at.at ?? '') ?? { value: null, steps: [] };
  const [halfBefore = 0, twelveBefore = 0, half = 0, twelve = 0] = steps.slice(-4).map(moneyIn);
  expect(halfBefore).toBeLessThan(twelveBefore);
  expect(twelve).toBeLessThanOrEqual(half);
  // By hand: every litre more of Half costs 20.00, and all of it will be used. The 250.00 of the concentrate, less what of
  // it will be used, are reached with 12 L of Half or a little more: 1,000 L of spray take 12 L.
  const litres = value?.kind === 'volume' ? value.ml / 1_000 : 0;
  expect(litres).toBeGreaterThan(900);
  expect(litres).toBeLessThan(1_100);
}

test('what a switch does to cost, stock and flags is said before, and each of it opens', async () => {
  const screen = await compared();
  const { change } = candidate(screen, 'twelve');
  expect(change?.to).toEqual({ product: 'twelve', dose: '0.5 mL/L', use: 'ornamentals', order: '' });
  const said = change?.effects.map(({ before, figure, after }) => [before, figure?.value, after]) ?? [];
  // In 26 weeks 26 × 120 mL: a litre of it from the bottle for 30.00, 2.12 L at 20.00; or 130 mL at 240.00.
  const now = 30 + 2.12 * 20;
  expect(said[0]).toEqual([expect.stringMatching(/product costs $/), dollars(now - 0.13 * 240), ' less.']);
  expect(said.map(([, value]) => value)).toContainEqual({ kind: 'stock', amount: 130_000, form: 'liquid' });
  expect(said).toContainEqual(['Twelve runs out ', { kind: 'day', day: '2026-04-06' }, '.']);
  expect(said.some(([before]) => before === 'Half no longer runs out')).toBe(true);
  expect(change?.flags.some(({ rule, product }) => rule === 'short' && product === 'twelve')).toBe(true);
  const cost = await opened(CLOCK, change?.effects[0]?.figure?.at ?? '');
  expect(cost.steps.slice(2).map(moneyIn)).toEqual([-now, 0.13 * 240].map((amount) => dollars(amount).micros));
});

/** Press the button of a switch as the page sends it. Gives where it leads, or what it says instead. */
async function press(screen: EquivalentsScreen, to: LineTo, back = ''): Promise<URLSearchParams | FormState> {
  const { shopId: shop, recipe, standing, line } = screen;
  const form = new FormData();
  const fields = { commandId: newId(), shop, recipe: recipe.id, standing, line: String(line), ...to, back };
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  try {
    return await switchProductAction(IDLE, form);
  } catch (led) {
    const { digest = '' } = led as { digest?: string };
    return new URLSearchParams(
      digest
        .split(';')
        .find((part) => part.startsWith('/'))
        ?.split('?')[1],
    );
  }
}

test('one press switches: a new version with the equal dose, as it was said; and one press takes it back', async () => {
  const screen = await compared();
  const recipe = async () => (await shopFileOf(screen.shopId)).recipes.find(({ id }) => id === 'r');
  const before = await recipe();
  const to = candidate(screen, 'twelve').change?.to;
  if (!to) throw new Error('there is a switch');
  const led = await press(screen, to);
  expect((await recipe())?.ingredients).toMatchObject([{ product: 'twelve', dose: '0.5 mL/L', use: 'ornamentals' }]);
  // Whoever still has the page of before is refused, and nothing is changed twice.
  expect(await press(screen, to)).toMatchObject({ status: 'refused' });
  if (!(led instanceof URLSearchParams)) throw new Error('it leads to a page');
  const was = { product: 'half', dose: '12 mL/L', use: 'ornamentals', order: '' };
  expect(Object.fromEntries(led)).toEqual({
    ...{ recipe: 'r', product: 'twelve', wasProduct: was.product, wasDose: was.dose },
    ...{ wasUse: was.use, wasOrder: was.order },
  });
  const after = await equivalentsScreen(CLOCK, { recipe: 'r', product: 'twelve', was });
  if (!after) throw new Error('there is something to compare');
  expect(after).toMatchObject({ dose: '0.5 mL/L', before: { name: 'Half', to: was } });
  // As strong as before: the way back is to the dose of before, at what it cost before.
  expect(candidate(after, 'half')).toMatchObject({
    change: { to: was },
    season: { value: candidate(screen, 'half').season.value },
  });
  expect(await press(after, was, 'yes')).toEqual(new URLSearchParams({ recipe: 'r', product: 'half' }));
  expect(await recipe()).toEqual(before);
});

test('a bottle is told where it can stand in, at which dose, and why it may not', async () => {
  await compared();
  const places = await standInsScreen(CLOCK, 'weak');
  expect(places?.bottles).toEqual([{ id: 'half', name: 'Half' }]);
  expect(places?.standIns).toMatchObject([
    { recipe: 'Thrips', instead: 'Half', now: '12 mL/L', allowed: false, dose: { value: { value: 6, unit: 'mL/L' } } },
  ]);
  expect((await standInsScreen(CLOCK, undefined))?.places).toMatchObject([
    { product: 'Half', others: ['Twelve', 'Weak'] },
  ]);
  await openAll(CLOCK, places);
});

test('what is about to die is used up elsewhere, on so many sprayings, and saves so much', async () => {
  // 12 mL of the concentrate keep to Sunday 19 April: 5 mL on the 6th and on the 13th, each in place of 120 mL at 20.00 a
  // litre; 2 mL die all the same.
  const lot = {
    id: 'x',
    product: 'twelve',
    pack: '12 mL',
    paid: '6.00',
    receivedOn: '2026-03-02',
    expiresOn: '2026-04-19',
  };
  await compared({ lots: [lot] });
  const screen = await standInsScreen(CLOCK, undefined);
  expect(screen?.useUps).toMatchObject([
    {
      ...{ product: 'Twelve', recipe: 'Thrips', instead: 'Half', diesOn: '2026-04-20' },
      ...{ wasted: { value: { amount: 12_000 } }, wasteCost: { value: dollars(6) } },
      amount: { value: { amount: 10_000 } },
      sprayings: { value: { kind: 'count', value: 2 } },
      saves: { value: dollars(0.24 * 20) },
    },
  ]);
  const workings = await openAll(CLOCK, screen);
  const amount = [...workings].find(([at]) => at.endsWith('/amount'))?.[1];
  const used = amount?.steps.slice(1).map(({ value }) => (value.kind === 'stock' ? Number(value.amount) : 0));
  expect(used).toEqual([5_000, 5_000]);
});
