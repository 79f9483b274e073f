import 'server-only';
import { isIP } from 'node:net';
import { createTransport } from 'nodemailer';
import type { MailSettings } from '@/shared/alerts/alert-settings';
import { type Reading, read, unreadable } from '@/shared/outcome';
import { type AlertMessage, subjectOf, textOf } from './alert-message';
import { judgedAddress, type LookUp } from './allowed-address';

/** So long a mail server may be silent before it counts as not there, ms. */
const PATIENCE = 15_000;

/**
 * Hand a message to a mail server.
 *
 * Gives    what happened, in a sentence
 * Refuses  an address that may not be connected to; a server without the guard that was asked for; and whatever the server
 *          refuses, in a sentence that never tells the password
 */
export async function sendMail(mail: MailSettings, message: AlertMessage, lookUp?: LookUp): Promise<Reading<string>> {
  if (mail.guard === 'none' && !mail.ownNetwork) return unreadable(UNGUARDED);
  const judged = await judgedAddress(mail.host, mail.ownNetwork, lookUp);
  if (!judged.ok) return judged;
  const transport = createTransport({
    ...{ host: judged.value.address, port: mail.port, secure: mail.guard === 'tls' },
    ...{ requireTLS: mail.guard === 'starttls', ignoreTLS: mail.guard === 'none' },
    // The certificate must name the machine that was asked for, not the number that it was found at.
    ...(isIP(mail.host) === 0 && { tls: { servername: mail.host } }),
    ...(mail.user !== null && { auth: { user: mail.user, pass: mail.password ?? '' } }),
    ...{ connectionTimeout: PATIENCE, greetingTimeout: PATIENCE, socketTimeout: PATIENCE },
    // What is sent is what was written here: no file and no address is ever read for it.
    ...{ disableFileAccess: true, disableUrlAccess: true },
  });
  try {
    const { accepted, rejected } = await transport.sendMail({
      from: { name: '', address: mail.from },
      to: mail.to.map((address) => ({ name: '', address })),
      messageId: `<${message.id}@alerts.bench-and-bottle.invalid>`,
      subject: subjectOf(message),
      text: textOf(message),
      headers: { 'Auto-Submitted': 'auto-generated' },
      date: new Date(message.madeAt),
    });
    const missed = rejected.length === 0 ? '' : ` It refused ${rejected.length} of the addresses.`;
    return read(`The mail server took it for ${accepted.length} of ${mail.to.length}.${missed}`);
  } catch (error) {
    return unreadable(whyNot(error));
  } finally {
    transport.close();
  }
}

const UNGUARDED = 'Without encryption a mail server is used in the shop’s own network only. Choose TLS or STARTTLS.';

type MailError = { code?: string; originalCode?: string; responseCode?: number };

/** What went wrong, without a word of what the server wrote: it may repeat what it was told. */
function whyNot(error: unknown): string {
  const { code, originalCode, responseCode } = error as MailError;
  const answer = responseCode === undefined ? '' : ` It answered ${responseCode}.`;
  const sentence = SENTENCES[originalCode ?? ''] ?? SENTENCES[code ?? ''] ?? 'The mail server did not take it.';
  return `${sentence}${answer}`;
}

const SENTENCES: Record<string, string> = {
  ECONNREFUSED: 'Nothing answers at that port of the mail server. Check the port.',
  ECONNRESET: 'The mail server hung up. Check the port and the encryption.',
  EHOSTUNREACH: 'The mail server cannot be reached from here.',
  ENETUNREACH: 'The mail server cannot be reached from here. Is this machine connected?',
  ETIMEDOUT: 'The mail server did not answer in time. Check the port and the encryption.',
  EAUTH: 'The mail server did not accept the user name and password.',
  ENOAUTH: 'The mail server wants a user name and a password.',
  EENVELOPE: 'The mail server refused the addresses.',
  ETLS: 'The mail server offers no encryption that can be trusted. Check the port, its name and its certificate.',
  DEPTH_ZERO_SELF_SIGNED_CERT: 'The mail server shows a certificate of its own making, so nobody knows who it is.',
  SELF_SIGNED_CERT_IN_CHAIN: 'The mail server shows a certificate of its own making, so nobody knows who it is.',
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: 'Nobody that this machine trusts has signed the mail server’s certificate.',
  CERT_HAS_EXPIRED: 'The mail server’s certificate has expired.',
  ERR_TLS_CERT_ALTNAME_INVALID: 'The mail server’s certificate is that of another machine. Check its name.',
  ECONNECTION: 'The mail server hung up. Check the port and the encryption.',
  EPROTOCOL: 'What answers there is no mail server. Check the port and the encryption.',
  ESOCKET: 'The mail server cannot be spoken to. Check its name, the port and the encryption.',
};
