import { beforeEach, expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { receiveLot } from '@/lib/commands/receive-lot';
import { damageFound } from '@/lib/data/found-damage';
import { newId } from '@/lib/data/new-id';
import { shopsHere } from '@/lib/data/shops';
import { shopFileOf, shopOf } from '@/lib/data/snapshot';
import { inTurn } from '@/lib/data/writer';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { flagsOnce, planDocument } from '@/lib/engine/ahead/plan-document';
import { readOnThread, writeOnThread } from '@/lib/threads/on-job-thread';
import { stoppable, stopWork } from '@/lib/threads/stoppable';
import { filePreviewOf } from '@/lib/views/import-preview';
import type { Written } from '@/shared/json/written';
import type { Outcome } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { generatedShop } from '../../bench/generated-shop';
import { CLOCK, freshDatabase } from '../data/fresh-database';

const TODAY = Day.parse('2026-03-31');
const TEXT = JSON.stringify(generatedShop({ products: 40, programs: 12, benches: 9 }));

beforeEach(async () => {
  await freshDatabase();
});

async function brought(text = TEXT): Promise<string> {
  const parsed = parseShopFile(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults[0]));
  const done = await importShopFile({ commandId: newId(), file: parsed.file, into: { isDemo: false } }, CLOCK);
  if (!done.ok) throw new Error('the shop was refused');
  return done.value.shopId;
}

async function textOf(outcome: Outcome<Written>): Promise<string> {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return new Response(outcome.value.pieces).text();
}

test('a thread plans the very text that would be planned here, one question after another', async () => {
  const shop = await brought();
  const plan = planAhead(await shopOf(shop), TODAY, 20);
  const asked = { what: 'plan', shop, today: TODAY, weeks: 20 } as const;
  expect(await textOf(await readOnThread({ ...asked, flags: 'daily' }))).toBe(JSON.stringify(planDocument(plan)));
  const once = { ...planDocument(plan), flags: flagsOnce(plan.flags) };
  expect(await textOf(await readOnThread({ ...asked, flags: 'once' }))).toBe(JSON.stringify(once));
});

test('the export is the same text, and knows the name of its shop', async () => {
  const shop = await brought();
  const outcome = await readOnThread({ what: 'shop file', shop });
  expect(await textOf(outcome)).toBe(`${JSON.stringify(await shopFileOf(shop), null, 2)}\n`);
  expect(outcome).toMatchObject({ value: { name: 'Generated' } });
});

test('an import on a thread brings in what one here does, and leaves this thread free', async () => {
  const here = await shopFileOf(await brought());
  let turns = 0;
  const ticking = setInterval(() => turns++, 5);
  const commandId = newId();
  const asked = { what: 'file import', commandId, into: { isDemo: false }, text: TEXT } as const;
  const steps: object[] = [];
  const text = await textOf(await writeOnThread(asked, { told: (step) => steps.push(step) }));
  clearInterval(ticking);
  const { shopId } = JSON.parse(text);
  expect(await shopFileOf(shopId)).toEqual(here);
  expect(steps).toEqual([{ step: 'reading' }, { step: 'saving' }]);
  expect(turns).toBeGreaterThan(20);
  // Sent again it is answered as it was, and nothing of it is taken for a change from outside.
  expect(await textOf(await writeOnThread(asked))).toBe(text);
  expect(await damageFound()).toMatchObject({ file: [], rows: [] });
  expect((await receiveLot(lotOf(shopId), CLOCK)).ok).toBe(true);
});

test('what is changed while an import is being prepared is not written over', async () => {
  const shop = await brought();
  const other = JSON.parse(TEXT);
  other.offers[0].price = '1.00';
  const text = JSON.stringify(other);
  const preview = await filePreviewOf({ id: shop, name: 'Generated' }, text);
  if (!preview.ok) throw new Error('the preview was refused');
  const into = { shopId: shop, fingerprint: preview.value.fingerprint ?? '' };
  const late = writeOnThread(
    { what: 'file import', commandId: newId(), into, text },
    // The thread has begun; this command is in the line before it.
    { told: (step) => JSON.stringify(step).includes('reading') && void receiveLot(lotOf(shop), CLOCK) },
  );
  expect(await late).toMatchObject({ ok: false, refusal: { code: 'shop-changed-since-preview' } });
  const again = await filePreviewOf({ id: shop, name: 'Generated' }, text);
  if (!again.ok) throw new Error('the preview was refused');
  const anew = { shopId: shop, fingerprint: again.value.fingerprint ?? '' };
  const done = await writeOnThread({ what: 'file import', commandId: newId(), into: anew, text });
  expect(JSON.parse(await textOf(done))).toMatchObject({ added: 0, changed: 1 });
});

test.each(['while it is read', 'while it waits for its turn'])(
  'an import that is stopped %s changes nothing, and the next one goes in',
  async (when) => {
    const before = (await shopsHere()).length;
    const commandId = newId();
    const asked = { what: 'file import', commandId, into: { isDemo: false }, text: TEXT } as const;
    const other = when === 'while it waits for its turn' ? slowTurn() : Promise.resolve();
    const outcome = await stoppable(commandId, (signal) => {
      if (when === 'while it is read') return writeOnThread(asked, { signal, told: () => stopWork(commandId) });
      setTimeout(() => stopWork(commandId), 1_500);
      return writeOnThread(asked, { signal });
    });
    expect(outcome).toMatchObject({ ok: false, refusal: { said: 'This was stopped. Nothing was changed.' } });
    await other;
    expect((await shopsHere()).length).toBe(before);
    expect(await damageFound()).toMatchObject({ file: [], rows: [] });
    expect(JSON.parse(await textOf(await writeOnThread(asked)))).toMatchObject({ added: expect.any(Number) });
    expect((await shopsHere()).length).toBe(before + 1);
  },
);

/** Holds the line of commands for a while, as a large import does. */
const slowTurn = () => inTurn(() => new Promise<void>((resume) => setTimeout(resume, 3_000)));

test('an import that is stopped once it is being saved goes in whole, and says so', async () => {
  const commandId = newId();
  const asked = { what: 'file import', commandId, into: { isDemo: false }, text: TEXT } as const;
  const stopAtSaving = (step: object) => JSON.stringify(step).includes('saving') && stopWork(commandId);
  const outcome = await stoppable(commandId, (signal) => writeOnThread(asked, { told: stopAtSaving, signal }));
  const { shopId } = JSON.parse(await textOf(outcome));
  expect((await shopFileOf(shopId)).products).toHaveLength(JSON.parse(TEXT).products.length);
  expect(stopWork(commandId)).toBe(false);
});

test('a question that somebody stops, or that nobody reads, holds up nobody after it', async () => {
  const shop = await brought();
  const stop = new AbortController();
  const asked = { what: 'plan', shop, today: TODAY, weeks: 104, flags: 'daily' } as const;
  const stopped = readOnThread(asked, { signal: stop.signal });
  setTimeout(() => stop.abort(), 20);
  expect(await stopped).toMatchObject({ ok: false, refusal: { code: 'too-much-work' } });
  const left = await readOnThread(asked);
  if (left.ok) await left.value.pieces.cancel();
  expect((await textOf(await readOnThread({ ...asked, weeks: 1 }))).length).toBeGreaterThan(100);
});

function lotOf(shopId: string) {
  return {
    ...{ commandId: newId(), shopId, product: 'p0', pack: '1 gal', count: 1, paid: null, keptIn: null },
    ...{ receivedOn: TODAY, openedOn: null, expiresOn: null },
  };
}
