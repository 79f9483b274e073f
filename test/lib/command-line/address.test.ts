import { expect, test, vi } from 'vitest';
import { readAddress } from '@/lib/command-line/start/address.js';
import { addressInEnv } from '@/lib/command-line/start/network.js';
import { networkNames } from '@/lib/command-line/start/network-names.js';
import { beyondLoopback } from '@/lib/door/allowed-hosts';

const NAMES = ['192.168.7.20', 'shop.local', 'shop'];
const NETWORK = { network: true };
const PLAIN = { network: true, plain: true };

test.each([
  ['nothing set', {}, {}, { host: '127.0.0.1', url: 'http://127.0.0.1:3000', publicUrl: null, network: '' }],
  ['another port', { PORT: '80' }, {}, { url: 'http://127.0.0.1', port: 80, publicUrl: null }],
  ['another loopback address', { HOST: '[::1]' }, {}, { host: '::1', url: 'http://[::1]:3000', network: '' }],
  [
    'behind a proxy',
    { PUBLIC_URL: 'https://shop.example' },
    {},
    { host: '127.0.0.1', url: 'http://127.0.0.1:3000', publicUrl: 'https://shop.example', network: '' },
  ],
  [
    'the network',
    {},
    NETWORK,
    { host: '0.0.0.0', url: 'https://127.0.0.1:3000', publicUrl: 'https://192.168.7.20:3000', network: 'https' },
  ],
  [
    'the network by a name',
    { PUBLIC_URL: 'https://bench.local:3000/' },
    NETWORK,
    { publicUrl: 'https://bench.local:3000' },
  ],
  [
    'the network at one address',
    { HOST: '10.0.0.5' },
    NETWORK,
    { host: '10.0.0.5', publicUrl: 'https://10.0.0.5:3000' },
  ],
  ['the network in plain', {}, PLAIN, { publicUrl: 'http://192.168.7.20:3000', network: 'plain', scheme: 'http' }],
])('%s', (_, env, asked, expected) => {
  expect(readAddress(env, asked, NAMES)).toMatchObject(expected);
});

test('a name in PUBLIC_URL becomes one of the names that the certificate holds', () => {
  const { names } = readAddress({ PUBLIC_URL: 'https://bench.local:3000' }, NETWORK, NAMES);
  expect(names).toEqual([...NAMES, 'bench.local']);
});

test.each([
  ['a host beyond this machine', { HOST: '0.0.0.0' }, {}, /HOST is 0\.0\.0\.0/],
  ['a name that is no loopback', { HOST: 'shop.example' }, {}, /HOST is shop\.example/],
  ['plain without the network', {}, { plain: true }, /--network is missing/],
  ['a port that is none', { PORT: '0' }, {}, /not a port/],
  ['a path', { PUBLIC_URL: 'https://shop.example/today' }, {}, /not the address of a whole site/],
  ['no scheme', { PUBLIC_URL: 'shop.example' }, {}, /not the address of a whole site/],
  ['another scheme', { PUBLIC_URL: 'ftp://shop.example' }, {}, /not the address of a whole site/],
  ['an account in it', { PUBLIC_URL: 'https://a:b@shop.example' }, {}, /not the address of a whole site/],
  ['http where https is served', { PUBLIC_URL: 'http://shop.example' }, NETWORK, /speaks https itself/],
  ['https where http is served', { PUBLIC_URL: 'https://shop.example' }, PLAIN, /speaks http itself/],
])('%s is refused with a sentence', (_, env, asked, says) => {
  expect(() => readAddress(env, asked, NAMES)).toThrow(says);
});

test.each([
  [{}, {}, false],
  [{ HOST: '127.0.0.2' }, NETWORK, false],
  [{ HOST: '10.0.0.1', PUBLIC_URL: 'https://localhost:3000' }, NETWORK, true],
  [{}, NETWORK, true],
  [{ PUBLIC_URL: 'https://shop.example' }, {}, true],
  [{ PUBLIC_URL: 'http://localhost:3000' }, {}, false],
])('%o %o is reached by other machines: %s', (env, asked, expected) => {
  const started: Record<string, string> = addressInEnv(readAddress(env, asked, NAMES));
  for (const [name, value] of Object.entries(started)) vi.stubEnv(name, value);
  expect(beyondLoopback()).toBe(expected);
  vi.unstubAllEnvs();
});

test('home addresses come first, and what no phone reaches is left out', () => {
  const at = (address: string, internal = false) => ({ address, internal });
  const interfaces = {
    lo: [at('127.0.0.1', true)],
    tunnel: [at('100.64.0.3'), at('fd00::1'), at('fe80::1')],
    wifi: [at('169.254.1.1'), at('10.0.0.4'), at('192.168.1.20')],
  };
  expect(networkNames(interfaces, 'Shop.local')).toEqual([
    ...['192.168.1.20', '10.0.0.4', '100.64.0.3', 'fd00::1', 'shop.local', 'shop'],
  ]);
  expect(networkNames({}, 'a name with spaces')).toEqual([]);
});
