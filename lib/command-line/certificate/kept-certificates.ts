import { createPrivateKey, X509Certificate } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { type Certificate, makeAuthority, makeServerCertificate } from './make-certificates';

const DAY_MS = 24 * 60 * 60 * 1_000;
/** A certificate of the server is made anew when it ends sooner than this. */
const RENEW_DAYS = 30;
/** An authority is made anew when it could not sign for a whole server certificate and its renewal any more. */
const RENEW_AUTHORITY_DAYS = 90;

/** The certificates of a shop, and which of them were just made. */
export type KeptCertificates = {
  authority: string;
  /** What the server speaks https with: its certificate followed by the authority's, and its key. */
  server: Certificate;
  madeAuthority: boolean;
  madeServer: boolean;
};

/**
 * The certificates that are kept in a data folder. What is missing, unreadable, about to end, or made for other names is
 * made anew; the authority only where it must, because every phone has to be told of a new one.
 *
 * Takes    the data folder; every name and address that the server is reached by; the moment
 */
export async function keptCertificates(
  folder: string,
  names: readonly string[],
  now: number,
): Promise<KeptCertificates> {
  const place = join(folder, 'certificate');
  if (!existsSync(place)) mkdirSync(place, { mode: 0o700 });
  const known = readPair(place, 'authority');
  const authority = known && lasts(known, now, RENEW_AUTHORITY_DAYS) ? known : await makeAuthority(now);
  const madeAuthority = authority !== known;
  if (madeAuthority) keepPair(place, 'authority', authority);
  const before = readPair(place, 'server');
  const isGood = before && !madeAuthority && lasts(before, now, RENEW_DAYS) && fits(before, authority, names);
  const server = isGood ? before : await makeServerCertificate(authority, withLoopback(names), now);
  if (!isGood) keepPair(place, 'server', server);
  return {
    authority: authority.cert,
    server: { cert: `${server.cert}\n${authority.cert}`, key: server.key },
    ...{ madeAuthority, madeServer: !isGood },
  };
}

/** The fingerprint by which people compare a certificate: SHA-256, as pairs of hexadecimal digits. */
export const fingerprintOf = (cert: string): string => new X509Certificate(cert).fingerprint256;

/** The last day a certificate counts, YYYY-MM-DD. */
export const lastDayOf = (cert: string): string => dayOf(endOf(cert));

const endOf = (cert: string): number => Date.parse(new X509Certificate(cert).validTo);
const dayOf = (at: number): string => new Date(at).toISOString().slice(0, 10);

const withLoopback = (names: readonly string[]): string[] => [...new Set([...names, 'localhost', '127.0.0.1', '::1'])];

function lasts({ cert }: Certificate, now: number, days: number): boolean {
  const begins = Date.parse(new X509Certificate(cert).validFrom);
  return begins <= now && endOf(cert) >= now + days * DAY_MS;
}

/** True when the authority signed it, and for every one of these names. */
function fits({ cert }: Certificate, authority: Certificate, names: readonly string[]): boolean {
  const read = new X509Certificate(cert);
  const holds = (name: string) => (isIP(name) ? read.checkIP(name) : read.checkHost(name)) !== undefined;
  return read.verify(new X509Certificate(authority.cert).publicKey) && withLoopback(names).every(holds);
}

/** Null when a file is missing, or holds no certificate and the key of it. */
function readPair(place: string, name: string): Certificate | null {
  try {
    const [cert, key] = [`${name}.pem`, `${name}-key.pem`].map((file) => readFileSync(join(place, file), 'utf8'));
    if (cert === undefined || key === undefined) return null;
    return new X509Certificate(cert).checkPrivateKey(createPrivateKey(key)) ? { cert, key } : null;
  } catch {
    return null;
  }
}

/** Each file appears whole, and can be read by the account of the shop alone. */
function keepPair(place: string, name: string, { cert, key }: Certificate): void {
  for (const [file, text] of [
    [`${name}-key.pem`, key],
    [`${name}.pem`, cert],
  ] as const) {
    const fresh = join(place, `.new-${file}`);
    writeFileSync(fresh, text, { mode: 0o600 });
    chmodSync(fresh, 0o600);
    renameSync(fresh, join(place, file));
  }
}
