import { existsSync, readFileSync, rmSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import Database from 'better-sqlite3';

const { E2E_DATA = '', E2E_DOOR_PORT = '', BUILD_DIR = '' } = process.env;

export const PORT = Number(E2E_DOOR_PORT);
export const OWN_HOST = `127.0.0.1:${PORT}`;
export const OWN_ORIGIN = `http://${OWN_HOST}`;

export type Knock = {
  method?: string;
  path?: string;
  /** Sent beside Host; a Content-Length is added when there is a body and none is given. */
  headers?: Record<string, string | undefined>;
  body?: string | Buffer;
};
export type Heard = { status: number; headers: IncomingHttpHeaders; body: string };

/** Send a request exactly as written: no browser or client library in between mends it. */
export function knock({ method = 'POST', path = '/', headers = {}, body }: Knock): Promise<Heard> {
  const given = Object.fromEntries(
    Object.entries({ Host: OWN_HOST, Cookie: `shown-shop=${demoShopHere()}`, ...headers }).filter(
      ([, value]) => value !== undefined,
    ),
  );
  const isFramed = Object.keys(given).some((name) => /^(content-length|transfer-encoding)$/i.test(name));
  const framed =
    body === undefined || isFramed ? given : { ...given, 'Content-Length': String(Buffer.byteLength(body)) };
  return new Promise((resolve, reject) => {
    const options = { host: '127.0.0.1', port: PORT, method, path, headers: framed, setHost: false, agent: false };
    const sent = request({ ...options, headers: { Connection: 'keep-alive', ...framed } }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('error', reject);
      answer.on('end', () => {
        resolve({
          status: answer.statusCode ?? 0,
          headers: answer.headers,
          body: Buffer.concat(chunks).toString('utf8'),
        });
        sent.destroy();
      });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

let demo: string | undefined;

/** The id of the demo shop of this server: what knocks works in it, whatever other shops were brought in. */
export function demoShopHere(): string {
  demo ??= inDatabase((database) => String(database.prepare('SELECT id FROM Shop WHERE isDemo = 1').pluck().get()));
  return demo;
}

/** Send raw bytes down a socket, and give the status line of the answer; empty when the server just hangs up. */
export function rawKnock(text: string, patienceMs = 10_000): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect({ host: '127.0.0.1', port: PORT }, () => socket.write(text));
    let heard = '';
    const done = () => {
      socket.destroy();
      resolve(heard.split('\r\n')[0] ?? '');
    };
    socket.setTimeout(patienceMs, done);
    socket.on('data', (chunk) => {
      heard += chunk.toString('latin1');
      if (heard.includes('\r\n')) done();
    });
    socket.on('error', done);
    socket.on('close', done);
  });
}

const BOUNDARY = 'bench-and-bottle-boundary';
export const FORM_TYPE = `multipart/form-data; boundary=${BOUNDARY}`;

export function formBody(fields: [name: string, value: string][]): string {
  const parts = fields.map(
    ([name, value]) => `--${BOUNDARY}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  return `${parts.join('')}--${BOUNDARY}--\r\n`;
}

/** A form as the browser's own script sends it to an action: the fields, and what they are given to. */
export function actionBody(fields: Record<string, string>): string {
  const named = Object.entries(fields).map(([name, value]): [string, string] => [`_1_${name}`, value]);
  return formBody([...named, ['0', '[{"status":"idle"},"$K1"]']]);
}

/** The id of every server action that was built. */
export function builtActions(): string[] {
  const manifest = join(import.meta.dirname, '../../..', BUILD_DIR, 'server/server-reference-manifest.json');
  const { node }: { node: Record<string, unknown> } = JSON.parse(readFileSync(manifest, 'utf8'));
  return Object.keys(node);
}

/** Everything the database holds, in one line: it changes when any row of any table does. */
export function everyRow(): string {
  return inDatabase((database) => {
    const tables = database.prepare("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").pluck().all();
    return tables
      .map(
        (table) =>
          `${table}:${JSON.stringify(database.prepare(`SELECT * FROM "${table}"`).safeIntegers().raw().all(), withBigInts)}`,
      )
      .join('\n');
  });
}

function inDatabase<T>(look: (database: Database.Database) => T): T {
  const database = new Database(join(E2E_DATA, 'door/shop.db'), { readonly: true, fileMustExist: true });
  try {
    return look(database);
  } finally {
    database.close();
  }
}

const withBigInts = (_: string, value: unknown) => (typeof value === 'bigint' ? `${value}n` : value);

/** How many bytes the server still holds when it has cleared away what it can. Null where no signal can ask it. */
export async function bytesHeld(): Promise<number | null> {
  if (process.platform === 'win32') return null;
  const told = join(E2E_DATA, 'door/memory-held');
  rmSync(told, { force: true });
  const { pid } = JSON.parse(readFileSync(join(E2E_DATA, 'door/server.lock'), 'utf8'));
  process.kill(pid, 'SIGUSR2');
  while (!existsSync(told)) await new Promise((resume) => setTimeout(resume, 20));
  return Number(readFileSync(told, 'utf8'));
}
