import { expect, test, vi } from 'vitest';
import { cookiesIn, deviceCookie } from '@/lib/access/session-cookie';
import { type From, signIn } from '@/lib/access/sign-in';
import { clock } from '@/lib/clock';
import { figure } from '@/test/promises/figure';
import { freshDatabase } from '../data/fresh-database';
import { PASSWORD, personHere } from './people-here';

// To stretch a password takes a quarter of a second; how often one may be tried does not depend on it.
vi.mock('@/lib/access/password-hash', () => ({
  keptPassword: async (password: string) => `plain ${password}`,
  isPassword: async (password: string, kept: string | null) => kept === `plain ${password}`,
}));

let tested = 0;

/** A browser of its own, at an address of its own. */
function browser(cookie = ''): From {
  tested += 1;
  return { cookie: cookiesIn(cookie), browser: 'a test', address: `10.1.0.${tested}` };
}

test('five wrong passwords for an account are the last for now, from whatever address; a browser of the person goes on', async () => {
  await freshDatabase();
  await personHere('Guessed', {}, PASSWORD);
  const own = await signIn({ name: 'Guessed', password: PASSWORD }, browser(), clock);
  if (!own.ok) throw new Error(JSON.stringify(own.refusal));
  const guesses = await Promise.all(
    Array.from({ length: 12 }, (_, guess) => signIn({ name: 'Guessed', password: `guess ${guess}` }, browser(), clock)),
  );
  const codes = guesses.map((guess) => !guess.ok && guess.refusal.code);
  expect(codes.filter((code) => code === 'wrong-password')).toHaveLength(5);
  expect(codes.filter((code) => code === 'too-many-tries')).toHaveLength(7);
  expect(await signIn({ name: 'Guessed', password: PASSWORD }, browser(), clock)).toMatchObject({
    refusal: { code: 'too-many-tries' },
  });
  figure(28, `${codes.length} guesses at once from as many addresses: 5 were tried`);
  const known = browser(`${deviceCookie()}=${own.value.device}`);
  expect(await signIn({ name: 'Guessed', password: PASSWORD }, known, clock)).toMatchObject({ ok: true });
});

test('twenty tries from one address are the last for now, whatever accounts they name', async () => {
  await freshDatabase();
  const from = { ...browser(), address: '10.2.0.1' };
  const tries = await Promise.all(
    Array.from({ length: 24 }, (_, number) => signIn({ name: `Somebody ${number}`, password: 'x' }, from, clock)),
  );
  const codes = tries.map((each) => !each.ok && each.refusal.code);
  expect(codes.filter((code) => code === 'wrong-password')).toHaveLength(20);
});
