import { expect, test, vi } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { budgetAsked, recordsAsked, whatIfAsked } from '@/lib/threads/read-answers';
import { budgetMade } from '@/lib/views/budget-seen';
import { recordsAnswer, recordsCsv } from '@/lib/views/log';
import { whatIfAnswer } from '@/lib/views/what-if';
import { LogQuestion } from '@/shared/api/questions';
import { whatIfIn } from '@/shared/forms/what-if';
import { Written } from '@/shared/json/written';
import { type Outcome, refuse } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { shopWithRecords } from '../../bench/long-history';
import { CLOCK, freshDatabase } from '../data/fresh-database';

vi.mock('next/headers', () => ({ cookies: async () => ({ get: () => undefined }) }));

/* What a large shop has answered on a thread is what would be answered here. */

/** Over 300 records are worked out on a thread, which reads the time by itself. */
async function largeShop(): Promise<string> {
  vi.stubEnv('BENCH_CLOCK', new Date(CLOCK.now()).toISOString());
  await freshDatabase();
  const parsed = parseShopFile(JSON.stringify(shopWithRecords({ products: 10, programs: 4, benches: 5 }, 320)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults[0]));
  const done = await importShopFile({ commandId: newId(), file: parsed.file, into: { isDemo: false } }, CLOCK);
  if (!done.ok) throw new Error('the shop was refused');
  return done.value.shopId;
}

const { signal } = new AbortController();

function given<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

async function textOf(outcome: Outcome<unknown>): Promise<string> {
  const written = given(outcome);
  expect(written).toBeInstanceOf(Written);
  // With its byte-order mark, which a reader of text would take away.
  return Buffer.from(await new Response((written as Written).pieces).arrayBuffer()).toString('utf8');
}

test('records, a budget and a supposition of a large shop are on a thread what they are here', async () => {
  const shop = await largeShop();
  await sameRecords(shop);
  await sameSupposed(shop);
  const budget = (await budgetAsked(CLOCK, { by: 'product' })) ?? refuse({ code: 'not-found', what: 'shop', id: shop });
  expect(given(budget)).toEqual(await budgetMade(shop, 'product', CLOCK));
  // Worked out once for each state of the shop.
  const again = await budgetAsked(CLOCK, { by: 'product' });
  expect(again?.ok && again.value).toBe(given(budget));
}, 60_000);

/** Record by record, the same document and the same list. */
async function sameRecords(shop: string): Promise<void> {
  for (const asked of [{}, { bench: 'b1' }, { from: '2030-01-01' }]) {
    const question = LogQuestion.parse({ shop, ...asked });
    const here = given(await recordsAnswer(question, CLOCK));
    const json = await textOf(await recordsAsked(question, 'json', CLOCK, signal));
    expect(json).toBe(`${JSON.stringify(here, null, 2)}\n`);
    const csv = await textOf(await recordsAsked(question, 'csv', CLOCK, signal));
    expect(csv).toBe(given(await recordsCsv(question, CLOCK)));
  }
}

/** A further spraying has every rule looked at again; a price does not, and is supposed here. */
async function sameSupposed(shop: string): Promise<void> {
  const extra = { ...whatIfIn({ extra: 'g0', extraOn: '2026-04-07' }), shop };
  const there = await textOf(await whatIfAsked(extra, CLOCK, signal));
  expect(there).toBe(JSON.stringify(given(await whatIfAnswer(extra, CLOCK))));
  const dearer = { ...whatIfIn({ product: 'p0', price: '150' }), shop };
  expect(await whatIfAsked(dearer, CLOCK, signal)).toEqual(await whatIfAnswer(dearer, CLOCK));
}
