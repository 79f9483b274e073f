import { afterEach, expect, test, vi } from 'vitest';
import { allowedHosts, beyondLoopback, networkWay, ownHosts, publicOrigin } from '@/lib/door/allowed-hosts';
import { judgeKnock } from '@/lib/door/judge-knock';

afterEach(() => vi.unstubAllEnvs());

const PROXY = { PORT: '3000', HOST: '127.0.0.1', PUBLIC_URL: 'https://shop.example' };
const OWN = {
  ...{ PORT: '3000', HOST: '0.0.0.0', NETWORK: 'https', NETWORK_NAMES: '192.168.7.20 fd00::20 bench.local' },
  PUBLIC_URL: 'https://192.168.7.20:3000',
};
const PLAIN = { ...OWN, NETWORK: 'plain', PUBLIC_URL: 'http://192.168.7.20:3000' };

function judged(env: Record<string, string>, host: string, origin: string) {
  const sent: Record<string, string> = { host, origin, 'content-length': '1' };
  const header = (name: string) => sent[name] ?? null;
  return judgeKnock({ method: 'POST', path: '/api/v1/mix/judge', header }, allowedHosts(env))?.status ?? 'in';
}

test.each([
  ['behind a proxy, by the public name', PROXY, 'shop.example', 'https://shop.example', 'in'],
  ['the same with the port written', PROXY, 'shop.example:443', 'https://shop.example:443', 'in'],
  ['by http where https is meant', PROXY, 'shop.example', 'http://shop.example', 403],
  ['behind a proxy, on this machine', PROXY, '127.0.0.1:3000', 'http://127.0.0.1:3000', 'in'],
  ['a host that borrows the scheme of another', PROXY, '127.0.0.1:3000', 'https://127.0.0.1:3000', 403],
  ['another name at the proxy', PROXY, 'other.example', 'https://other.example', 403],
  ['a page of the public name that asks this machine', PROXY, '127.0.0.1:3000', 'https://shop.example', 403],
  ['the network by its address', OWN, '192.168.7.20:3000', 'https://192.168.7.20:3000', 'in'],
  ['the network by its newer address', OWN, '[fd00::20]:3000', 'https://[fd00::20]:3000', 'in'],
  ['the network by its name', OWN, 'bench.local:3000', 'https://bench.local:3000', 'in'],
  ['this machine, which speaks https then, too', OWN, 'localhost:3000', 'https://localhost:3000', 'in'],
  ['the network by http', OWN, '192.168.7.20:3000', 'http://192.168.7.20:3000', 403],
  ['an address that is not ours', OWN, '192.168.7.21:3000', 'https://192.168.7.21:3000', 403],
  ['the address that is listened on', OWN, '0.0.0.0:3000', 'https://0.0.0.0:3000', 403],
  ['plain, as it was chosen', PLAIN, '192.168.7.20:3000', 'http://192.168.7.20:3000', 'in'],
  [
    'names of the network that is not served',
    { ...OWN, NETWORK: '' },
    'bench.local:3000',
    'http://bench.local:3000',
    403,
  ],
])('%s', (_, env, host, origin, verdict) => {
  expect(judged(env, host, origin)).toBe(verdict);
});

test.each([
  [{ HOST: '127.0.0.1', PUBLIC_URL: '' }, false, 'none', 'http://localhost:3000'],
  [{ ...PROXY }, true, 'proxy', 'https://shop.example'],
  [{ ...OWN }, true, 'https', 'https://192.168.7.20:3000'],
  [{ ...PLAIN }, true, 'plain', 'http://192.168.7.20:3000'],
  [
    { HOST: '127.0.0.2', NETWORK: 'https', PUBLIC_URL: 'https://127.0.0.2:3000' },
    false,
    'https',
    'https://127.0.0.2:3000',
  ],
])('%o: reached by others %s, %s, and links begin with %s', (env, beyond, way, origin) => {
  for (const [name, value] of Object.entries({ PORT: '3000', NETWORK: '', NETWORK_NAMES: '', ...env })) {
    vi.stubEnv(name, value);
  }
  expect(beyondLoopback()).toBe(beyond);
  expect(networkWay().way).toBe(way);
  expect(publicOrigin('localhost:3000')).toBe(origin);
  expect(ownHosts()).toBe(ownHosts());
});
