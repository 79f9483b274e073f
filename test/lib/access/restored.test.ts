import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { cookiesIn } from '@/lib/access/session-cookie';
import { whoAsks } from '@/lib/access/who-asks';
import { database } from '@/lib/data/database';
import { makeBackup } from '@/lib/data/make-backup';
import { openOrStop } from '@/lib/data/open-or-stop';
import { bringBack, candidate } from '@/lib/data/restore-backup';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';
import { ownerHere, sessionOf } from './people-here';

test('a backup keeps people, and whoever was signed in when it was made is signed out once it is put back', async () => {
  await smallShop();
  const cookie = await sessionOf(await ownerHere());
  const { file } = await database();
  await openOrStop();
  const { file: copy, manifest } = await makeBackup(file, join(dirname(file), 'backups'), CLOCK.now());
  expect(manifest).toMatchObject({ isSound: true });
  expect(await whoAsks(cookiesIn(cookie))).toMatchObject({ kind: 'person' });
  await (await database()).close();
  await bringBack(await candidate(copy), file, CLOCK.now());
  await openOrStop();
  expect(await whoAsks(cookiesIn(cookie))).toEqual({ kind: 'stranger', why: 'no-session' });
  expect(await (await database()).reader.person.count()).toBe(1);
});
