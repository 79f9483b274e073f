import { spawnSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './free-port.js';

/*
 * A real PostgreSQL for the tests, on a free port of this machine, with data that is thrown away. It refuses to run as
 * root, so there it runs as the account `postgres`, or `nobody`.
 */

/** The folder with the server's programs; null where PostgreSQL is not installed. */
export function postgresqlPrograms() {
  const packages = '/usr/lib/postgresql';
  const versions = existsSync(packages) ? readdirSync(packages).sort((a, b) => Number(b) - Number(a)) : [];
  const named = versions.map((version) => join(packages, version, 'bin'));
  const onPath = (process.env.PATH ?? '').split(':');
  return [...named, ...onPath].find((folder) => existsSync(join(folder, 'initdb'))) ?? null;
}

/**
 * Start a server.
 *
 * Gives    its address without a database, and what stops it; null where PostgreSQL is not installed
 * Throws   Error with what the server said when it does not start
 */
export async function startPostgresql() {
  const programs = postgresqlPrograms();
  if (programs === null) return null;
  const folder = mkdtempSync(join(tmpdir(), 'postgresql-'));
  chmodSync(folder, 0o755);
  const account = accountFor();
  const own = join(folder, 'own');
  mkdirSync(own, { mode: 0o700 });
  if (account) chownSync(own, account.uid, account.gid);
  const data = join(own, 'data');
  const run = (program, args) => {
    const ended = spawnSync(join(programs, program), args, {
      ...account,
      cwd: own,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    if (ended.status !== 0) throw new Error(`${program}: ${ended.stdout}${ended.stderr}`);
  };
  const port = await freePort();
  run('initdb', ['-D', data, '-U', 'bench', '--auth=trust', '-E', 'UTF8', '--locale=C.UTF-8', '--no-sync']);
  const options = `-p ${port} -k ${own} -h 127.0.0.1 -c fsync=off -c max_connections=200`;
  run('pg_ctl', ['-D', data, '-o', options, '-l', join(own, 'log'), '-w', 'start']);
  const stop = () => {
    run('pg_ctl', ['-D', data, '-m', 'immediate', '-w', 'stop']);
    rmSync(folder, { recursive: true, force: true });
  };
  return { url: `postgresql://bench@127.0.0.1:${port}`, stop };
}

/** The account to run as; none when this one is not root. */
function accountFor() {
  if (process.getuid?.() !== 0) return undefined;
  const lines = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'));
  const [, , uid, gid] = lines.find(([name]) => name === 'postgres') ?? lines.find(([name]) => name === 'nobody') ?? [];
  return { uid: Number(uid), gid: Number(gid) };
}
