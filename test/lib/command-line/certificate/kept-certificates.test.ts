import { X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkServerIdentity } from 'node:tls';
import { expect, test } from 'vitest';
import { authorityPage } from '@/lib/command-line/certificate/authority-page';
import { serveAuthority } from '@/lib/command-line/certificate/hand-out-authority';
import { fingerprintOf, keptCertificates, lastDayOf } from '@/lib/command-line/certificate/kept-certificates';

const DAY = 86_400_000;
// What looks at a certificate here goes by the clock of this machine.
const NOW = Date.now();
const NAMES = ['192.168.7.20', 'fd00::20', 'shop.local'];
const folder = () => mkdtempSync(join(tmpdir(), 'certificate-'));

/** What a device that trusts the authority, or nobody of ours, hears from a server that shows this certificate. */
async function heard(
  server: { cert: string; key: string },
  ca: string | undefined,
  servername: string,
): Promise<string> {
  const serving = createServer(server, (_, response) => response.end('the shop'));
  serving.listen(0, '127.0.0.1');
  await once(serving, 'listening');
  const { port } = serving.address() as AddressInfo;
  // The name is judged as a browser does it, though all of this goes through one machine.
  const asName = (_: string, cert: Parameters<typeof checkServerIdentity>[1]) => checkServerIdentity(servername, cert);
  const told = new Promise<string>((resolve) => {
    const asked = request({ host: '127.0.0.1', port, ca, checkServerIdentity: asName, agent: false }, (answer) =>
      answer.setEncoding('utf8').on('data', resolve),
    );
    asked.on('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? error.message));
    asked.end();
  });
  try {
    return await told;
  } finally {
    serving.close();
    serving.closeAllConnections();
  }
}

test('a device that trusts the authority reaches the shop by each of its names, and by no other', async () => {
  const { authority, server } = await keptCertificates(folder(), NAMES, NOW);
  for (const name of [...NAMES, 'localhost', '127.0.0.1']) {
    expect([name, await heard(server, authority, name)]).toEqual([name, 'the shop']);
  }
  expect(await heard(server, authority, 'other.example')).toBe('ERR_TLS_CERT_ALTNAME_INVALID');
  expect(await heard(server, undefined, 'shop.local')).toMatch(/SELF_SIGNED|UNABLE_TO/);
  const other = await keptCertificates(folder(), NAMES, NOW);
  expect(await heard(server, other.authority, 'shop.local')).not.toBe('the shop');
});

test('what is kept is used again; the server gets a new one for a new name, near its end, and when it is damaged', async () => {
  const place = folder();
  const first = await keptCertificates(place, NAMES, NOW);
  expect([first.madeAuthority, first.madeServer]).toEqual([true, true]);
  const again = await keptCertificates(place, NAMES, NOW + 366 * DAY);
  expect(again).toMatchObject({ madeAuthority: false, madeServer: false, server: first.server });

  const moved = await keptCertificates(place, [...NAMES, '192.168.7.99'], NOW);
  expect(moved).toMatchObject({ madeAuthority: false, madeServer: true, authority: first.authority });
  expect(await heard(moved.server, first.authority, '192.168.7.99')).toBe('the shop');

  const late = await keptCertificates(place, NAMES, NOW + 368 * DAY);
  expect(late).toMatchObject({ madeAuthority: false, madeServer: true });

  writeFileSync(join(place, 'certificate/server-key.pem'), 'nothing');
  expect(await keptCertificates(place, NAMES, NOW)).toMatchObject({ madeAuthority: false, madeServer: true });
});

test('the server’s certificate never outlasts the authority, which is made anew before it ends', async () => {
  const place = folder();
  const { authority } = await keptCertificates(place, NAMES, NOW);
  const near = await keptCertificates(place, NAMES, NOW + 3_500 * DAY);
  expect(near.authority).toBe(authority);
  expect(lastDayOf(near.server.cert)).toBe(lastDayOf(authority));
  const after = await keptCertificates(place, NAMES, NOW + 3_561 * DAY);
  expect(after).toMatchObject({ madeAuthority: true, madeServer: true });
  expect(fingerprintOf(after.authority)).not.toBe(fingerprintOf(authority));
});

test.runIf(process.platform !== 'win32')('keys can be read by the account of the shop alone', async () => {
  const place = folder();
  await keptCertificates(place, NAMES, NOW);
  const mode = (name: string) => statSync(join(place, name)).mode & 0o777;
  expect(mode('certificate')).toBe(0o700);
  for (const name of ['authority-key.pem', 'server-key.pem']) {
    expect(mode(`certificate/${name}`)).toBe(0o600);
    expect(readFileSync(join(place, 'certificate', name), 'utf8')).toContain('PRIVATE KEY');
  }
});

test('a phone gets the authority and the steps, and no key', async () => {
  const { authority } = await keptCertificates(folder(), NAMES, NOW);
  const fingerprint = fingerprintOf(authority);
  const page = authorityPage({ fingerprint, lastDay: lastDayOf(authority), shopUrl: 'https://shop.local:3000' });
  const serving = await serveAuthority(authority, page);
  const { port } = serving.address() as AddressInfo;
  const get = (path: string) => fetch(`http://127.0.0.1:${port}${path}`);
  const file = Buffer.from(await (await get('/authority.crt')).arrayBuffer());
  expect(new X509Certificate(file).fingerprint256).toBe(fingerprint);
  expect(file.toString('latin1')).not.toContain('PRIVATE');
  expect(await (await get('/')).text()).toContain(fingerprint);
  for (const path of ['/certificate/authority-key.pem', '/../authority-key.pem', '/x']) {
    expect((await get(path)).status).toBe(404);
  }
  serving.close();
  serving.closeAllConnections();
});
