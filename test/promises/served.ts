import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** A running server of the built program, on a data folder of its own. */
export type Served = {
  url: string;
  pid: number;
  get(path: string, headers?: Record<string, string>): Promise<Answer>;
  post(path: string, body: unknown): Promise<Answer>;
  /** End it as a power switch would the process: nothing is closed. */
  kill(): Promise<void>;
  /** End it as Ctrl-C does. Gives the exit code. */
  stop(): Promise<number | null>;
};

export type Answer = { status: number; ms: number; body: unknown; retryAfter: string | null };

/**
 * Start the built program and wait until it answers.
 *
 * Takes    the data folder, the port, and further environment
 * Throws   Error with what the program said when it ends before it is ready
 */
export async function serve(folder: string, port: number, env: Record<string, string> = {}): Promise<Served> {
  const child = spawn(process.execPath, ['lib/command-line/start.js'], {
    cwd: root,
    env: {
      ...process.env,
      NODE_ENV: 'production',
      CHANGES_PER_MINUTE: '1000000',
      ...env,
      DATA_DIR: folder,
      PORT: `${port}`,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  await ready(child);
  const url = `http://127.0.0.1:${port}`;
  const ended = once(child, 'exit');
  const end = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    await ended;
    return child.exitCode;
  };
  return {
    url,
    pid: child.pid ?? 0,
    get: (path, headers = {}) => ask(url, path, { method: 'GET', headers }),
    post: (path, body) =>
      ask(url, path, {
        method: 'POST',
        headers: { Origin: url, 'Content-Type': 'application/json' },
        body: JSON.stringify(body),
      }),
    kill: async () => void (await end('SIGKILL')),
    stop: () => end('SIGTERM'),
  };
}

function ready(child: ChildProcess): Promise<void> {
  let said = '';
  return new Promise((resolve, reject) => {
    const hear = (part: Buffer) => {
      said += part;
      if (/is ready at/.test(said)) resolve();
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}:\n${said}`)));
  });
}

async function ask(url: string, path: string, sent: RequestInit): Promise<Answer> {
  const began = performance.now();
  const answer = await fetch(`${url}${path}`, { ...sent, signal: AbortSignal.timeout(120_000) });
  const text = await answer.text();
  const isJson = answer.headers.get('content-type')?.includes('json');
  const retryAfter = answer.headers.get('retry-after');
  return { status: answer.status, ms: performance.now() - began, body: isJson ? JSON.parse(text) : text, retryAfter };
}

/** The id of a new command, as a device makes it. */
export const commandId = (): string => randomBytes(16).toString('hex');
