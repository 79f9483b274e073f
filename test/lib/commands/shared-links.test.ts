import { expect, test } from 'vitest';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { newId } from '@/lib/data/new-id';
import { shopOfLink, workingLinks } from '@/lib/data/shared-links';
import { shopFileOf } from '@/lib/data/snapshot';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

async function linkOf(shopId: string, commandId = newId()) {
  const outcome = await makeSharedLink({ commandId, shopId, kind: 'calendar' }, CLOCK);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  const link = (await workingLinks(shopId)).find(({ id }) => id === outcome.value.id);
  if (!link) throw new Error('the link is not there');
  return link;
}

test('a link shows its own shop and its own kind only', async () => {
  const shopId = await smallShop();
  const { token } = await linkOf(shopId);
  expect(token).toMatch(/^[\w-]{32}$/);
  expect(await shopOfLink(token, 'calendar')).toBe(shopId);
  expect(await shopOfLink(token, 'board')).toBeNull();
  expect(await shopOfLink(`${token}x`, 'calendar')).toBeNull();
  expect(await shopOfLink('', 'calendar')).toBeNull();
});

test('a link that was asked for twice with one command is one, and every other is another', async () => {
  const shopId = await smallShop();
  const command = newId();
  const [one, same, other] = [await linkOf(shopId, command), await linkOf(shopId, command), await linkOf(shopId)];
  expect(same).toEqual(one);
  expect(other.token).not.toBe(one.token);
  expect(await workingLinks(shopId)).toHaveLength(2);
});

test('a revoked link shows nothing from then on, and the others still do', async () => {
  const shopId = await smallShop();
  const [gone, stays] = [await linkOf(shopId), await linkOf(shopId)];
  const revoke = () => revokeSharedLink({ commandId: newId(), shopId, link: gone.id }, CLOCK);
  expect(await revoke()).toMatchObject({ ok: true });
  expect(await revoke()).toMatchObject({ ok: true });
  expect(await shopOfLink(gone.token, 'calendar')).toBeNull();
  expect(await shopOfLink(stays.token, 'calendar')).toBe(shopId);
  expect((await workingLinks(shopId)).map(({ id }) => id)).toEqual([stays.id]);
});

test('a link of another shop, and one that never was, are not revoked', async () => {
  const shopId = await smallShop();
  const { token } = await linkOf(shopId);
  const revoked = await revokeSharedLink({ commandId: newId(), shopId, link: 'no-such-link' }, CLOCK);
  expect(revoked).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  const made = await makeSharedLink({ commandId: newId(), shopId: 'no-such-shop', kind: 'calendar' }, CLOCK);
  expect(made).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  expect(await shopOfLink(token, 'calendar')).toBe(shopId);
});

test('no token stands in the shop file or in the answer of a command', async () => {
  const shopId = await smallShop();
  const { token, id } = await linkOf(shopId);
  expect(JSON.stringify(await shopFileOf(shopId))).not.toContain(token);
  const again = await makeSharedLink({ commandId: newId(), shopId, kind: 'board' }, CLOCK);
  expect(again.ok && Object.keys(again.value)).toEqual(['id']);
  expect(id).not.toContain(token);
});
