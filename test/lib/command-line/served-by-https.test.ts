import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { type Agent, request, Agent as SafeAgent } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterEach, expect, test, vi } from 'vitest';
import { keptCertificates } from '@/lib/command-line/certificate/kept-certificates';
import { takePort } from '@/lib/command-line/start/address.js';
import { frontOf } from '@/lib/door/front';

afterEach(() => vi.unstubAllEnvs());

/** The shop's front behind https on a loopback address, and a way to ask it. */
async function served() {
  const folder = mkdtempSync(join(tmpdir(), 'https-'));
  const { authority, server: certificate } = await keptCertificates(folder, ['127.0.0.1'], Date.now());
  const server = await takePort({ host: '127.0.0.1', port: 0 }, certificate);
  const { port } = server.address() as AddressInfo;
  const own = `127.0.0.1:${port}`;
  const env = { HOST: '127.0.0.1', PORT: String(port), NETWORK: 'https', PUBLIC_URL: `https://${own}` };
  for (const [name, value] of Object.entries(env)) vi.stubEnv(name, value);
  const starting = await asked({ port, ca: authority });
  server.removeAllListeners('request');
  server.on(
    'request',
    frontOf((_, response) => response.end('the shop')),
  );
  return { server, port, own, ca: authority, starting };
}

type Asked = {
  port: number;
  ca: string;
  path?: string;
  headers?: Record<string, string>;
  body?: string;
  agent?: Agent;
};

/** A client that lies about the Host: what stands in the certificate is tested beside the certificates. */
const checkServerIdentity = () => undefined;

function asked({ port, ca, path = '/', headers = {}, body, agent }: Asked): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const method = body === undefined ? 'GET' : 'POST';
    const options = { host: '127.0.0.1', port, ca, path, method, headers, agent: agent ?? false, checkServerIdentity };
    const sent = request(options, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part) => {
        text += part;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

test('over https the door judges as ever: its own origin, the length of a body, another host', async () => {
  const { server, port, ca, own, starting } = await served();
  expect(starting).toMatchObject({ status: 503, text: expect.stringContaining('starting') });
  expect(await asked({ port, ca })).toEqual({ status: 200, text: 'the shop' });
  const sent = { port, ca, path: '/api/v1/mix/finish', body: '{}' };
  const json = { 'content-type': 'application/json' };
  expect(await asked({ ...sent, headers: { ...json, origin: `https://${own}` } })).toMatchObject({ status: 200 });
  expect(await asked({ ...sent, headers: { ...json, origin: `http://${own}` } })).toMatchObject({ status: 403 });
  expect(await asked({ port, ca, headers: { host: 'other.example' } })).toMatchObject({ status: 403 });
  const long = { ...json, origin: `https://${own}` };
  expect(await asked({ ...sent, headers: long, body: 'x'.repeat(300_000) })).toMatchObject({ status: 413 });
  server.close();
});

test('a stop ends what is idle at once; who never says a word is let go of', async () => {
  const { server, port, ca } = await served();
  expect([server.headersTimeout, server.requestTimeout, server.keepAliveTimeout]).toEqual([15_000, 60_000, 5_000]);
  const agent = new SafeAgent({ keepAlive: true, ca });
  await asked({ port, ca, agent });
  const silent = connect({ host: '127.0.0.1', port, ca });
  await once(silent, 'secureConnect');
  const closed = once(server, 'close');
  server.close();
  server.closeIdleConnections();
  silent.destroy();
  await closed;
  agent.destroy();
});
