import { X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import QRCode from 'qrcode';
import { clock } from '@/lib/clock';
import { authorityPage } from './authority-page';
import { fingerprintOf, keptCertificates, lastDayOf } from './kept-certificates';

/** How the shop is reached, as the start reads it. */
type Reached = { publicUrl: string | null; names: readonly string[] };

/**
 * Make or renew the certificates, show the authority as a square code, and serve its file to phones until somebody stops
 * it. Nothing but that file and its page is served, and no key.
 *
 * Gives    the code to end with
 */
export async function handOutAuthority(folder: string, { publicUrl, names }: Reached): Promise<number> {
  const { authority, madeAuthority, server } = await keptCertificates(folder, names, clock.now());
  const page = { fingerprint: fingerprintOf(authority), lastDay: lastDayOf(authority), shopUrl: publicUrl ?? '' };
  const serving = await serveAuthority(authority, authorityPage(page));
  const address = serving.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const host = names[0] ?? '127.0.0.1';
  const where = `http://${host.includes(':') ? `[${host}]` : host}:${port}/`;
  const code = await QRCode.toString(where, { type: 'terminal', small: true });
  const made = madeAuthority ? ['A new authority was made: every device has to trust it once.'] : [];
  const lines = [
    ...made,
    `The authority counts until ${page.lastDay}, the certificate of the server until ${lastDayOf(server.cert)}.`,
    'Its signs, which the phone has to show as well (SHA-256):',
    page.fingerprint,
    `Scan this with a phone on the same network, or open ${where}`,
  ];
  console.log(
    `\n${lines.map((line) => `  ${line}\n`).join('')}\n${code}\n  Stop it with Ctrl-C once every device has it.\n`,
  );
  await once(process, 'SIGINT');
  serving.close();
  serving.closeAllConnections();
  return 0;
}

/** A server of the authority's own certificate on any free port. Gives it once it listens. */
export async function serveAuthority(authority: string, page: string): Promise<Server> {
  const file = new X509Certificate(authority).raw;
  const serving = createServer(({ method, url }, response) => {
    const isRead = method === 'GET' || method === 'HEAD';
    const [type, body] =
      url === '/authority.crt' ? ['application/x-x509-ca-cert', file] : ['text/html; charset=utf-8', page];
    const isThere = isRead && (url === '/' || url === '/authority.crt');
    response.writeHead(isThere ? 200 : 404, { 'Content-Type': type, 'Cache-Control': 'no-store' });
    response.end(isThere && method === 'GET' ? body : '');
  });
  serving.listen(0, '0.0.0.0');
  await once(serving, 'listening');
  return serving;
}
