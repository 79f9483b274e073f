import { expect, test } from 'vitest';
import { judgedAddress, kindOf } from '@/lib/alerts/allowed-address';

test.each([
  [
    'public',
    ['8.8.8.8', '1.1.1.1', '172.15.255.255', '172.32.0.0', '193.168.0.1', '2606:4700::1111', '::ffff:8.8.8.8'],
  ],
  ['own', ['127.0.0.1', '127.8.9.1', '10.0.0.1', '172.16.0.0', '172.31.255.255', '192.168.1.20', '::1', 'fd00::1']],
  ['own', ['::ffff:127.0.0.1', '::ffff:c0a8:0101', '0:0:0:0:0:ffff:a00:1']],
  ['never', ['0.0.0.0', '0.1.2.3', '169.254.169.254', '100.64.0.1', '224.0.0.1', '255.255.255.255', '240.0.0.1', '::']],
  [
    'never',
    ['fe80::1', 'fe80::1%eth0', 'ff02::1', '::ffff:169.254.169.254', '64:ff9b::7f00:1', '2002:7f00:1::', '2001::1'],
  ],
  ['never', ['192.0.2.1', '198.51.100.1', '203.0.113.9', '2001:db8::1', 'shop.example', '', '1.2.3']],
] as const)('%s: %j', (kind, addresses) => {
  for (const address of addresses) expect({ address, kind: kindOf(address) }).toEqual({ address, kind });
});

const judge = (ownNetwork: boolean, ...addresses: string[]) =>
  judgedAddress('till.example', ownNetwork, async () => addresses);

test('an address is taken where every one that the name has is of the kind that was allowed', async () => {
  expect(await judge(false, '8.8.8.8', '2606:4700::1111')).toEqual({
    ok: true,
    value: { address: '8.8.8.8', family: 4 },
  });
  expect(await judge(true, 'fd00::1', '10.0.0.1')).toEqual({ ok: true, value: { address: 'fd00::1', family: 6 } });
});

test.each([
  ['one inside among those outside', false, ['8.8.8.8', '10.0.0.1'], /own network.*with the tick/],
  ['one outside among those inside', true, ['10.0.0.1', '8.8.8.8'], /outside.*Take the tick out/],
  ['one that nothing may be sent to, ticked', true, ['169.254.169.254'], /nothing may be sent/],
  ['one that nothing may be sent to, not ticked', false, ['169.254.169.254'], /nothing may be sent/],
  ['none', false, [], /Nothing is known/],
])('refused: %s', async (_, ownNetwork, addresses, sentence) => {
  expect(await judge(ownNetwork, ...addresses)).toMatchObject({ ok: false, message: expect.stringMatching(sentence) });
});

test('a name that cannot be looked up is refused, and a number is looked up nowhere', async () => {
  const failing = async () => Promise.reject(new Error('no network'));
  expect(await judgedAddress('till.example', true, failing)).toMatchObject({ ok: false });
  expect(await judgedAddress('127.0.0.1', true, failing)).toMatchObject({ ok: true });
});
