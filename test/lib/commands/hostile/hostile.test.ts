import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { rawShop } from '@/lib/data/shop-rows';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates } from '@/lib/views/bench-states';
import type { Outcome } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { partFaults } from '@/shared/shop-file/part-faults';
import { isLong, runs } from '@/test/runs';
import { CLOCK } from '../../data/fresh-database';
import { smallShop } from '../small-shop';
import { TARGET } from './a-hostile-shop';
import { HOSTILE } from './hostile-commands';
import { Fields, type Plan, plan } from './hostile-values';

/** Looks at the clock once a minute, and takes nothing from anybody. */
const TAKES_NOTHING = ['watch-clock', 'watch-backups', 'back-up'];

const NAMES = Object.keys(HOSTILE);

test('the fuzzer sends every command there is', () => {
  const files = readdirSync(new URL('../../../../lib/commands', import.meta.url)).map((file) =>
    file.replace(/\.ts$/, ''),
  );
  expect([...NAMES, ...TAKES_NOTHING].sort()).toEqual(files.sort());
});

/** The shop is read, checked, shown and carried over: nothing in it stops any of these. */
async function holds(shopId: string): Promise<void> {
  const { reader } = await database();
  expect(partFaults(await reader.$transaction((rows) => rawShop(rows, shopId)), true)).toEqual([]);
  const file = await shopFileOf(shopId);
  expect(benchStates(shopOfFile(file), CLOCK.now(), { doubt: null, lag: null })).toHaveLength(file.benches.length);
  const exported = JSON.stringify(file);
  const checked = parseShopFile(exported);
  expect(checked.ok ? [] : checked.faults).toEqual([]);
  if (checked.ok) expect(JSON.stringify(await broughtIn(checked.file))).toBe(exported);
}

async function broughtIn(file: ShopFile): Promise<ShopFile> {
  const outcome = await importShopFile({ commandId: newId(), file, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return shopFileOf(outcome.value.shopId);
}

/** What was sprayed closes its benches even where its record is refused; nothing else is left of what is refused. */
async function withoutUnderWay(shopId: string): Promise<string> {
  const { underWay: _, ...file } = await shopFileOf(shopId);
  return JSON.stringify(file);
}

/** Sends a command; what is refused leaves no trace, and the fence behind the commands has nothing left to refuse. */
async function send(name: string, shopId: string, of: Plan): Promise<boolean> {
  const before = await withoutUnderWay(shopId);
  const fields = new Fields(of);
  const outcome = await answered(name, fields, shopId);
  if (outcome?.ok) return true;
  expect(outcome?.refusal.code).not.toBe('cannot-be-read');
  const isOfTwo = ['confirm-amendment', 'revoke-shared-link'].includes(name);
  if (!isOfTwo) expect(await withoutUnderWay(shopId)).toBe(before);
  return false;
}

/** What a command answers; null when it stopped at a number that nobody can send. Anything else it answers with a sentence. */
async function answered(name: string, fields: Fields, shopId: string): Promise<Outcome<unknown> | null> {
  const command = HOSTILE[name];
  if (!command) throw new Error(`there is no command ${name}`);
  try {
    return await command(fields, shopId);
  } catch (error) {
    if (fields.hasImpossibleNumber) return null;
    throw error;
  }
}

/** Every command once as it should be, then once for each field and value that its first fields can have. */
test('whatever a command accepts, the shop is read, its board answers, and its export comes in and goes out the same', {
  timeout: 6 * 3_600_000,
}, async () => {
  const accepted = new Map<string, number>();
  let shopId = await smallShop(TARGET);
  let sinceFresh = 0;
  for (const name of NAMES) {
    if (await send(name, shopId, { fields: [], pick: 0, seed: 2 })) accepted.set(name, 1);
  }
  await holds(shopId);
  expect(NAMES.filter((name) => !accepted.has(name))).toEqual([]);
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...NAMES), plan, async (name, of) => {
      sinceFresh += 1;
      if (sinceFresh % IN_A_SHOP === 0) shopId = await smallShop(TARGET);
      if (!(await send(name, shopId, of))) return;
      accepted.set(name, (accepted.get(name) ?? 0) + 1);
      await holds(shopId);
    }),
    { numRuns: runs(12, 20_000), endOnFailure: true, ...(isLong ? {} : { seed: 20_261_130 }) },
  );
  console.info('accepted:', JSON.stringify(Object.fromEntries(accepted)));
});

/** Writes pile up, and a shop with many of them takes longer to carry over. */
const IN_A_SHOP = 60;
