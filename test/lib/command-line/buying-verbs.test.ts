import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { shop } from '@/lib/command-line/verbs';
import { demoShop } from '@/lib/demo/demo-shop';
import { BuyAnswer, EquivalentsAnswer } from '@/shared/api/buying-answers';
import { Day } from '@/shared/time/day';
import { captured, faultsIn } from './captured';

const TODAY = '2026-04-14';
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'buying-verbs-'));
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(demoShop(Day.parse(TODAY))));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
});

/** The command inside this process: its code, and what it would have written. */
async function asked(verb: string, ...options: string[]) {
  vi.stubEnv('INIT_CWD', folder);
  const [out, err] = [captured(process.stdout), captured(process.stderr)];
  const code = await shop([verb, 'shop.json', '--today', TODAY, ...options]);
  vi.restoreAllMocks();
  return { code, out: out.join(''), faults: faultsIn(err) };
}

test('buy prints what to order, and no more than either habit would cost', async () => {
  const { code, out } = await asked('buy', '--weeks', '26', '--seconds', '2');
  expect(code).toBe(0);
  const answer = BuyAnswer.parse(JSON.parse(out));
  expect(answer.orders.length).toBeGreaterThan(0);
  expect(Number(answer.cost.total)).toBeLessThanOrEqual(Number(answer.habits.smallestPack));
  expect(Number(answer.cost.total)).toBeLessThanOrEqual(Number(answer.habits.cheapestPerMl));
  const sum =
    Number(answer.cost.packs) + Number(answer.cost.freight) + Number(answer.cost.capital) - Number(answer.cost.left);
  expect(Number(answer.cost.total)).toBeCloseTo(sum, 6);
});

test('equivalents prints every product with the substance, what stands there now first', async () => {
  const options = ['--recipe', 'thrips-turn', '--product', 'spinosad-half', '--weeks', '12', '--seconds', '5'];
  const { code, out } = await asked('equivalents', ...options);
  expect(code).toBe(0);
  const answer = EquivalentsAnswer.parse(JSON.parse(out));
  expect(answer.candidates.map(({ product }) => product)).toEqual(['spinosad-half', 'spinosad-12']);
  expect(answer.best).not.toBeNull();
});

test('a question that the file cannot answer is refused at its place in the file', async () => {
  const file = {
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'S', timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal' },
    products: [{ id: 'p', name: 'Feed', kind: 'nutrient', form: 'liquid' }],
    recipes: [{ id: 'r', name: 'Weekly', ingredients: [{ product: 'p', dose: '5 mL/L' }] }],
  };
  writeFileSync(join(folder, 'bare.json'), JSON.stringify(file));
  vi.stubEnv('INIT_CWD', folder);
  const err = captured(process.stderr);
  expect(await shop(['equivalents', 'bare.json', '--today', TODAY, '--recipe', 'r', '--product', 'p'])).toBe(2);
  expect(faultsIn(err)).toEqual([
    {
      path: 'products[0].contents',
      message: 'Nobody has entered what is in Feed. Enter its contents from the label.',
    },
  ]);
});

test('options that cannot be read are refused together, each with what to write instead', async () => {
  const { code, faults } = await asked('buy', '--weeks', '0', '--seconds', 'soon');
  expect(code).toBe(2);
  expect(faults.map(({ message }) => message)).toEqual([
    expect.stringMatching(/^--weeks:/),
    '--seconds: "soon" is not a time. Write seconds above nothing, at most 3600.',
  ]);
  const other = await asked('equivalents', '--recipe', 'thrips-turn', '--product', 'spinosad-haf');
  expect(other).toMatchObject({
    code: 2,
    faults: [{ message: expect.stringMatching(/Did you mean "spinosad-half"\?/) }],
  });
  const none = await asked('equivalents');
  expect(none.faults.map(({ message }) => message)).toEqual([
    expect.stringMatching(/^--recipe: Name a recipe/),
    expect.stringMatching(/^--product: Name a product/),
  ]);
});
