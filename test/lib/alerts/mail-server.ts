import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';
import type { MailSettings } from '@/shared/alerts/alert-settings';

/** A message as a mail server takes it: who it is from and for by the envelope, and every line of it. */
type Taken = { from: string; to: string[]; raw: string; user: string | null };

export type MailServer = { port: number; taken: Taken[]; settings: (rest?: Partial<MailSettings>) => MailSettings };

type Ways = { password?: string; offersTls?: boolean; refuses?: string };

const open: SMTPServer[] = [];
/** Close every one that was opened, after each test. */
export async function closeMailServers(): Promise<void> {
  await Promise.all(open.splice(0).map((server) => new Promise<void>((resolve) => server.close(() => resolve()))));
}

/** A real mail server on this machine, with a certificate of its own making where it offers encryption. */
export async function mailServer({ password, offersTls = false, refuses }: Ways = {}): Promise<MailServer> {
  const taken: Taken[] = [];
  const server = new SMTPServer({
    logger: false,
    authOptional: password === undefined,
    allowInsecureAuth: true,
    disabledCommands: offersTls ? [] : ['STARTTLS'],
    onAuth: ({ username, password: given }, _, done) =>
      given === password ? done(null, { user: username }) : done(new Error(`no such user as ${username} ${given}`)),
    onRcptTo: ({ address }, _, done) => done(address === refuses ? new Error('no such box') : null),
    onData: (stream, session, done) => {
      let raw = '';
      stream.on('data', (chunk) => {
        raw += String(chunk);
      });
      stream.on('end', () => {
        const { mailFrom, rcptTo } = session.envelope;
        const from = mailFrom === false ? '' : (mailFrom?.address ?? '');
        taken.push({
          from,
          to: rcptTo.map(({ address }) => address),
          raw,
          user: session.user ? String(session.user) : null,
        });
        done();
      });
    },
  });
  // Whoever hangs up on the certificate is meant to.
  server.on('error', () => {});
  open.push(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()));
  const { port } = server.server.address() as AddressInfo;
  const settings = (rest: Partial<MailSettings> = {}): MailSettings => ({
    ...{ host: '127.0.0.1', port, guard: 'none', user: null, password: null },
    ...{ from: 'shop@bench.example', to: ['ana@bench.example'], ownNetwork: true },
    ...rest,
  });
  return { port, taken, settings };
}
