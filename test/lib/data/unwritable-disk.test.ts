import { copyFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { mount, ownDisk } from '../../setup/own-disk';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

/** A disk of four megabytes. */
const { disk, hasDisk } = ownDisk('small-disk', 'size=4m');

async function shopOnDisk(): Promise<string> {
  const shopId = await smallShop();
  const { file, close } = await database();
  await close();
  copyFileSync(file, join(disk, 'shop.db'));
  process.env.DATA_DIR = disk;
  await lookAtClock(CLOCK, true);
  return shopId;
}

const rename = (shopId: string, name: string) =>
  changeShop({ commandId: newId(), shopId, part: { benches: [{ ...SMALL.benches[0], id: 'b', name }] } }, CLOCK);

const benchOf = async (shopId: string) => (await shopFileOf(shopId)).benches[0]?.name;

function fillDisk(): void {
  try {
    writeFileSync(join(disk, 'filler'), Buffer.alloc(8_000_000));
  } catch {
    // Full, as it should be.
  }
}

test.skipIf(!hasDisk)(
  'on a full disk writes are refused with the cause, reading goes on, and room is enough to go on (needs root)',
  async () => {
    const shopId = await shopOnDisk();
    expect(await rename(shopId, 'before')).toMatchObject({ ok: true });
    fillDisk();
    let answer = await rename(shopId, 'full');
    for (let tries = 0; answer.ok && tries < 50; tries += 1) answer = await rename(shopId, `full ${tries}`);
    const said = expect.stringMatching(/The disk that holds .* is full\. Nothing was changed\. Make room/);
    expect(answer).toEqual({ ok: false, refusal: { code: 'disk-full', said } });
    const before = await benchOf(shopId);
    expect(await rename(shopId, 'again')).toMatchObject({ ok: false, refusal: { code: 'disk-full' } });
    expect(await benchOf(shopId)).toBe(before);
    rmSync(join(disk, 'filler'));
    expect(await rename(shopId, 'after')).toMatchObject({ ok: true });
    expect(await benchOf(shopId)).toBe('after');
    await (await database()).close();
  },
);

test.skipIf(!hasDisk)(
  'on a disk that turns read-only writes are refused with the cause, and reading goes on (needs root)',
  async () => {
    const shopId = await shopOnDisk();
    expect(await rename(shopId, 'before')).toMatchObject({ ok: true });
    if (!mount('-o', 'remount,ro', disk)) return;
    const refusal = { code: 'not-writable', said: expect.stringMatching(/may only be read|does not answer/) };
    expect(await rename(shopId, 'read-only')).toEqual({ ok: false, refusal });
    mount('-o', 'remount,rw', disk);
    expect(await rename(shopId, 'after')).toMatchObject({ ok: true });
    expect(await benchOf(shopId)).toBe('after');
    await (await database()).close();
  },
);
