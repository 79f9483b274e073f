// The certificate library asks for this before anything else.
import 'reflect-metadata';
import { isIP } from 'node:net';
import * as x509 from '@peculiar/x509';

/** A certificate and its private key, both as PEM. */
export type Certificate = { cert: string; key: string };

const DAY_MS = 24 * 60 * 60 * 1_000;
/** An authority lasts ten years, because every phone has to be told of the next one by hand. */
const AUTHORITY_DAYS = 3_650;
/** What the server shows lasts 397 days: some phones refuse longer ones. */
const SERVER_DAYS = 397;

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };

/** An authority of the shop's own: whoever trusts it trusts what it signs. Its key never leaves the data folder. */
export async function makeAuthority(now: number): Promise<Certificate> {
  const keys = await crypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const made = await x509.X509CertificateGenerator.createSelfSigned({
    name: 'CN=Bench & Bottle of this shop',
    ...lasting(now, AUTHORITY_DAYS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign + x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { cert: made.toString('pem'), key: await pemOf(keys.privateKey) };
}

/**
 * What the server shows, signed by the authority.
 *
 * Takes    the names and addresses that it is reached by; the moment. It never outlasts the authority
 */
export async function makeServerCertificate(
  authority: Certificate,
  names: readonly string[],
  now: number,
): Promise<Certificate> {
  const issuer = new x509.X509Certificate(authority.cert);
  const keys = await crypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const { notBefore, notAfter } = lasting(now, SERVER_DAYS);
  const made = await x509.X509CertificateGenerator.create({
    subject: 'CN=Bench & Bottle',
    issuer: issuer.subject,
    notBefore,
    notAfter: new Date(Math.min(notAfter.getTime(), issuer.notAfter.getTime())),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey: await signingKeyOf(authority.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(
        names.map((value) => ({ type: isIP(value) ? ('ip' as const) : ('dns' as const), value })),
      ),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { cert: made.toString('pem'), key: await pemOf(keys.privateKey) };
}

/** A day of grace before now: the clock of a phone may be behind. */
const lasting = (now: number, days: number) => ({
  notBefore: new Date(now - DAY_MS),
  notAfter: new Date(now + days * DAY_MS),
});

async function pemOf(key: CryptoKey): Promise<string> {
  return x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

async function signingKeyOf(pem: string): Promise<CryptoKey> {
  const [der] = x509.PemConverter.decode(pem);
  if (!der) throw new Error('The key of the authority cannot be read.');
  return crypto.subtle.importKey('pkcs8', der, ALGORITHM, false, ['sign']);
}
