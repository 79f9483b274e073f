import { expect, test } from 'vitest';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { correctLastDay } from '@/lib/commands/correct-last-day';
import { finishMix } from '@/lib/commands/finish-mix';
import { makeStockSolution } from '@/lib/commands/make-stock-solution';
import { moveContainer } from '@/lib/commands/move-container';
import { receiveDelivery } from '@/lib/commands/receive-delivery';
import { receiveLot } from '@/lib/commands/receive-lot';
import { receiveOrder } from '@/lib/commands/receive-order';
import { recordApplication } from '@/lib/commands/record-application';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { parseShopFile } from '@/shared/shop-file/parse';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { CLOCK } from '../../data/fresh-database';
import { smallShop, today } from '../small-shop';
import { TARGET } from './a-hostile-shop';

/*
 * Every value that a command once took and no reader could read afterwards: the export and Setup failed for good.
 */

const day = (text: string) => text as Day;
const moment = (milliseconds: number) => milliseconds as Instant;

const lot = { product: 'p', pack: '500 mL', count: 1, paid: null, expiresOn: null, keptIn: null };
const mix = {
  ...{ recipe: 'r', benches: ['b'], plants: null, startedAt: today(7), endedAt: today(8), by: null, planned: null },
  ...{ sprayed: exact(2000), leftover: exact(150), leftoverWent: null, conditions: null, pH: null, acid: null },
  poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: '6 mL', heldMore: false }], elsewhere: null }],
  ...{ passed: [], plannedCost: null },
};

type Sending = (shop: { commandId: string; shopId: string }, text: string) => Promise<{ ok: boolean }>;

const TEXT_FIELDS: [field: string, path: string, send: Sending][] = [
  ['by', 'by', (at, by) => finishMix({ ...at, ...mix, by }, CLOCK)],
  ['conditions', 'conditions', (at, conditions) => finishMix({ ...at, ...mix, conditions }, CLOCK)],
  ['plants', 'plants', (at, plants) => finishMix({ ...at, ...mix, plants }, CLOCK)],
  ['leftover', 'leftoverWent', (at, leftoverWent) => finishMix({ ...at, ...mix, leftoverWent }, CLOCK)],
  ['rule', 'passed.', (at, rule) => finishMix({ ...at, ...mix, passed: [{ rule, reason: 'needed' }] }, CLOCK)],
  [
    'reason of a stop',
    'passed.',
    (at, reason) => finishMix({ ...at, ...mix, passed: [{ rule: 'rotation', reason }] }, CLOCK),
  ],
  ['place', 'keptIn', (at, keptIn) => receiveLot({ ...at, ...lot, keptIn, receivedOn: day('2026-03-30') }, CLOCK)],
  [
    'place of a delivery',
    'lots[0].keptIn',
    (at, keptIn) => receiveDelivery({ ...at, receivedOn: day('2026-03-30'), lots: [{ ...lot, keptIn }] }, CLOCK),
  ],
  [
    'place of an order',
    'lots[0].keptIn',
    (at, keptIn) => {
      const came = [{ offer: 'o', count: 1, paid: null, expiresOn: null, keptIn }];
      return receiveOrder({ ...at, order: 'q', receivedOn: day('2026-03-30'), came, restIsOff: false }, CLOCK);
    },
  ],
  ['place it moves to', 'keptIn', (at, keptIn) => moveContainer({ ...at, lotId: 'l', place: 0, keptIn }, CLOCK)],
  [
    'place of a stock solution',
    'keptIn',
    (at, keptIn) => {
      const from = [{ lotId: 'l', place: 0, amount: stock(10_000) }];
      const made = { product: 'p', from, makeUpTo: { text: '100 mL', ml: exact(100) }, useByDays: null, keptIn };
      return makeStockSolution({ ...at, ...made }, CLOCK);
    },
  ],
  [
    'pack',
    'pack',
    (at, text) => receiveLot({ ...at, ...lot, pack: `500${text}mL`, receivedOn: day('2026-03-30') }, CLOCK),
  ],
  [
    'reason of a skip',
    'reason',
    (at, reason) => skipSpraying({ ...at, program: 'g', on: day('2026-03-10'), reason }, CLOCK),
  ],
];

const HOSTILE_TEXTS = [' ', '\t', 'Ada\tBerg', 'Ada\u2028', 'Ada\u0000', '\u202eAda', '\u200b'];

const isRefusedAt = (path: string) => ({
  ok: false,
  refusal: {
    code: 'faults',
    faults: expect.arrayContaining([
      { path: expect.stringContaining(path), message: expect.stringMatching(/(Write|Take|Give|Shorten|known).*\.$/) },
    ]),
  },
});

/** The values that were not refused at a field with a sentence. */
async function notRefused(shopId: string, path: string, send: Sending, values: readonly string[]): Promise<string[]> {
  const taken: string[] = [];
  for (const value of values) {
    const outcome = await send({ commandId: newId(), shopId }, value);
    try {
      expect(outcome).toMatchObject(isRefusedAt(path));
    } catch {
      taken.push(`${JSON.stringify(value)}: ${JSON.stringify(outcome)}`);
    }
  }
  return taken;
}

test('every text that could not be read again is refused beside its field, and the shop stays as it was', async () => {
  const shopId = await smallShop(TARGET);
  const before = await shopFileOf(shopId);
  for (const [field, path, send] of TEXT_FIELDS) {
    // A space or a tab alone is no reason, and a flag without a reason is not passed. In a pack either stands before the unit.
    const values = ['pack', 'reason of a stop'].includes(field) ? HOSTILE_TEXTS.slice(2) : HOSTILE_TEXTS;
    expect({ field, taken: await notRefused(shopId, path, send, values) }).toEqual({ field, taken: [] });
  }
  const after = await shopFileOf(shopId);
  expect(parseShopFile(JSON.stringify(after))).toMatchObject({ ok: true });
  // What was sprayed closes its benches even where its record is refused.
  expect({ ...after, underWay: undefined }).toEqual({ ...before, underWay: undefined });
});

const ODD_DAYS = ['1970-01-01', '1970-12-31', '3000-01-01', '9999-12-31', '1969-12-31'];
const DAY_FIELDS: [field: string, path: string, send: Sending][] = [
  ['received', 'receivedOn', (at, text) => receiveLot({ ...at, ...lot, receivedOn: day(text) }, CLOCK)],
  [
    'last day',
    'expiresOn',
    (at, text) => receiveLot({ ...at, ...lot, expiresOn: day(text), receivedOn: day('2026-03-30') }, CLOCK),
  ],
  [
    'corrected last day',
    'expiresOn',
    (at, text) => correctLastDay({ ...at, lotId: 'l', place: 0, expiresOn: day(text), reason: 'misread' }, CLOCK),
  ],
];

test('a bottle received, or with a last day, in a year that no shop file may name is refused beside that day', async () => {
  const shopId = await smallShop(TARGET);
  for (const [field, path, send] of DAY_FIELDS) {
    expect({ field, taken: await notRefused(shopId, path, send, ODD_DAYS) }).toEqual({ field, taken: [] });
  }
});

test('a mix or a record in a year that no shop file may name is refused beside its time', async () => {
  const shopId = await smallShop(TARGET);
  const sent = () => ({ commandId: newId(), shopId });
  for (const at of [0, 1, 86_400_000, 31_535_999_999, 32_503_680_000_000].map(moment)) {
    expect(await finishMix({ ...sent(), ...mix, mixedAt: at }, CLOCK)).toMatchObject(isRefusedAt('mixedAt'));
    expect(await finishMix({ ...sent(), ...mix, startedAt: at }, CLOCK)).toMatchObject(isRefusedAt('startedAt'));
    const record = { recipe: 'r', benches: ['b'], startedAt: at, endedAt: null };
    expect(await recordApplication({ ...sent(), ...record }, CLOCK)).toMatchObject(isRefusedAt('startedAt'));
  }
});

test('a bench that is named twice in a record is refused, since no shop file may say so', async () => {
  const shopId = await smallShop(TARGET);
  const record = { recipe: 'r', benches: ['b', 'b'], startedAt: today(7), endedAt: today(8) };
  const outcome = await recordApplication({ commandId: newId(), shopId, ...record }, CLOCK);
  expect(outcome).toMatchObject({ ok: false, refusal: { code: 'faults', faults: [{ path: 'benches' }] } });
});

test('a reason for confirming that holds a tab is refused', async () => {
  const shopId = await smallShop(TARGET);
  const asked = { commandId: newId(), shopId, application: 'a', version: 1, reason: 'asked\tAda' };
  expect(await confirmAmendment(asked, CLOCK)).toMatchObject(isRefusedAt('reason'));
});
