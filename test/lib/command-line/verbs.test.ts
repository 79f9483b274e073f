import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { MixAnswer } from '@/shared/api/answers';
import { changed, smallShop } from '../../shared/shop-file/small-shop';
import { captured, faultsIn } from './captured';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'verbs-'));
  put('shop.json', JSON.stringify(smallShop()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
  vi.resetModules();
});

const put = (name: string, content: string) => writeFileSync(join(folder, name), content);

/** The command inside this process: what it gives, and what it would have written. */
async function shop(words: string[], env: Record<string, string> = {}) {
  for (const [name, value] of Object.entries({ INIT_CWD: folder, ...env })) vi.stubEnv(name, value);
  const [out, err] = [captured(process.stdout), captured(process.stderr)];
  const verbs = await import('@/lib/command-line/verbs');
  const code = await verbs.shop(words);
  vi.restoreAllMocks();
  return { code, out: out.join(''), faults: faultsIn(err) };
}

test('schema prints the contract, and takes no file', async () => {
  const { code, out } = await shop(['schema']);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ $schema: expect.stringContaining('2020-12'), type: 'object' });
});

test('plan answers the same on every day when it is told the day', async () => {
  const words = ['plan', 'shop.json', '--today', '2026-03-02', '--weeks=3'];
  const one = await shop(words, { BENCH_CLOCK: '2030-01-01T00:00:00Z' });
  vi.resetModules();
  const two = await shop(words, { BENCH_CLOCK: '2026-03-02T00:00:00Z' });
  expect(one.code).toBe(0);
  expect(one.out).toBe(two.out);
  const plan = JSON.parse(one.out);
  expect(plan).toMatchObject({ from: '2026-03-02', weeks: 3 });
  expect(plan.sprayings).toHaveLength(3);
});

test('without a day, plan looks 26 weeks ahead from today on the shop’s calendar', async () => {
  // Half past two in the morning in London is still the evening before in New York.
  const { out } = await shop(['plan', 'shop.json'], { BENCH_CLOCK: '2026-03-03T02:30:00Z' });
  expect(JSON.parse(out)).toMatchObject({ from: '2026-03-02', weeks: 26 });
});

test('keepout says which benches are closed at a moment', async () => {
  const { code, out } = await shop(['keepout', 'shop.json', '--now', '2026-02-25T00:00:00Z']);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({
    now: '2026-02-24T19:00:00-05:00',
    benches: [{ state: 'closed' }, { state: 'open' }],
  });
});

test('mix says what goes into a volume, in which order and at what cost', async () => {
  const words = ['mix', 'shop.json', '--recipe', 'r1', '--volume', '2 gal', '--today', '2026-03-02'];
  const { code, out } = await shop(words, { BENCH_CLOCK: '2030-01-01T00:00:00Z' });
  expect(code).toBe(0);
  const mix = MixAnswer.parse(JSON.parse(out));
  expect(mix).toMatchObject({ ml: 7570.823568, reiHours: 12.5, cost: '1.988678' });
  expect(mix.steps.map(({ order, product, amount, unit }) => [order, product, amount, unit])).toEqual([
    [1, 'p1', 24, 'mL'],
    [2, 'p2', 8.4, 'g'],
  ]);
  const again = await shop(words);
  expect(again.out).toBe(out);
});

test('everything that mix cannot read is named', async () => {
  const { code, faults } = await shop(['mix', 'shop.json', '--recipe', 'r9', '--volume', '2 lb', '--area', '9 ft']);
  expect(code).toBe(2);
  expect(faults.map(({ message }) => message)).toEqual([
    '--recipe: There is no recipe "r9" in this file. Did you mean "r1"?',
    '--volume: "2 lb" is a weight. Write a volume, such as "2 gal".',
    expect.stringMatching(/^--area: "9 ft" has no unit of area/),
  ]);
});

test('figures too large to be exact are the file’s doing, and end in a sentence', async () => {
  let file = changed(smallShop(), ['offers', 0, 'price'], '100000000');
  file = changed(file, ['offers', 0, 'pack'], '0.001 mL');
  file = changed(file, ['lots'], []);
  put('dear.json', JSON.stringify(file));
  const { code, out, faults } = await shop(['plan', 'dear.json', '--today', '2026-03-02']);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(faults[0]?.message).toMatch(/digits too many/);
});

test.each([
  ['no verb', [], /one of check, schema, plan, .*keepout/],
  ['a verb that is none', ['chek', 'shop.json'], /Did you mean check\?/],
  ['a verb named like the inside of JavaScript', ['constructor'], /There is no verb/],
  ['no file', ['check'], /needs a shop file/],
  ['a file too many', ['check', 'shop.json', 'b.json'], /takes one file/],
  ['a file that schema does not take', ['schema', 'shop.json'], /takes no file/],
  ['a file that is not there', ['check', 'nothing.json'], /There is no file "nothing.json"/],
  ['a file below a file', ['check', 'shop.json/x'], /There is no file/],
  ['a folder', ['check', '.'], /is a folder/],
  ['an option that is none', ['plan', 'shop.json', '--week', '3'], /Did you mean --weeks\?/],
  ['an option of another verb', ['check', 'shop.json', '--today', '2026-03-02'], /no option "--today"/],
  ['an option without a value', ['plan', 'shop.json', '--weeks'], /--weeks 26/],
  ['an option given twice', ['plan', 'shop.json', '--weeks', '1', '--weeks', '2'], /twice/],
  ['a day that is none', ['plan', 'shop.json', '--today', '2026-02-30'], /--today: .*28 days/],
  ['a day far away', ['plan', 'shop.json', '--today', '1999-12-31'], /from 2000-01-01/],
  ['no weeks', ['plan', 'shop.json', '--weeks', '0'], /from 1 to 104/],
  ['too many weeks', ['plan', 'shop.json', '--weeks', '105'], /from 1 to 104/],
  ['half a week', ['plan', 'shop.json', '--weeks', '1.5'], /from 1 to 104/],
  ['a mix of no recipe', ['mix', 'shop.json', '--volume', '2 gal'], /--recipe: Name a recipe.*"r1"/],
  ['a mix of no volume', ['mix', 'shop.json', '--recipe', 'r1'], /--volume: Say how much/],
  ['a mix of nothing', ['mix', 'shop.json', '--recipe', 'r1', '--volume', '0 mL'], /--volume: .*above nothing/],
  ['a mix by the ounce', ['mix', 'shop.json', '--recipe', 'r1', '--volume', '8 oz'], /--volume: .*fluid ounces or/],
  ['a moment of no place', ['keepout', 'shop.json', '--now', '2026-03-02T09:00:00'], /--now: .*offset/],
])('%s is refused with one sentence', async (_, words, says) => {
  const { code, out, faults } = await shop(words);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(faults).toEqual([{ path: '', message: expect.stringMatching(says) }]);
});

test('every option that cannot be read is named', async () => {
  const { faults } = await shop(['plan', 'shop.json', '--today', 'soon', '--weeks', 'many']);
  expect(faults.map(({ message }) => message.slice(0, 7))).toEqual(['--today', '--weeks']);
});
