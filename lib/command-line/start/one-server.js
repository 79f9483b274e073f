import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { trouble } from './trouble.js';

/**
 * One server per data folder: two would each believe their own picture of the stock. The lock file names the process
 * and its port; a lock left behind by a crash is taken over.
 *
 * Refuses  a folder whose server is still running
 */
export async function lockFolder(folder, address) {
  const lock = join(folder, 'server.lock');
  const mine = JSON.stringify({ pid: process.pid, host: address.host, port: address.port });
  for (let attempt = 0; attempt < 5; attempt += 1) {
    try {
      writeFileSync(lock, mine, { flag: 'wx', mode: 0o600 });
      process.once('exit', () => unlock(lock, mine));
      return;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const holder = readHolder(lock);
    if (holder && (await isRunning(holder, address))) throw alreadyRunning(holder, folder, lock);
    if (holder || attempt > 0) rmSync(lock, { force: true });
    else await pause(300);
  }
  throw trouble(`The lock file ${lock} cannot be taken.`, 'If no other Bench & Bottle is running, delete that file.');
}

function readHolder(lock) {
  try {
    const holder = JSON.parse(readFileSync(lock, 'utf8'));
    return Number.isInteger(holder.pid) && Number.isInteger(holder.port) ? holder : null;
  } catch {
    return null;
  }
}

/** A process id can be given to another program after a restart, so the port must answer too; ours cannot be its. */
async function isRunning(holder, own) {
  if (holder.pid === process.pid || (holder.port === own.port && holder.host === own.host)) return false;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if (error.code !== 'EPERM') return false;
  }
  return new Promise((resolve) => {
    const socket = connect({ host: reachedAt(holder.host), port: holder.port, timeout: 2_000 });
    const answer = (running) => {
      socket.destroy();
      resolve(running);
    };
    socket.once('connect', () => answer(true));
    socket.once('error', () => answer(false));
    socket.once('timeout', () => answer(true));
  });
}

/** Where this machine itself reaches a server that listens on every address; not every system connects to that. */
function reachedAt(host) {
  if (host === '0.0.0.0') return '127.0.0.1';
  return host === '::' ? '::1' : host;
}

function alreadyRunning(holder, folder, lock) {
  return trouble(
    `Bench & Bottle is already running on the data in ${folder} (process ${holder.pid}), at ${holder.host}:${holder.port}.`,
    `Use that one, or stop it first. If you are sure it is gone, delete ${lock}.`,
  );
}

function unlock(lock, mine) {
  try {
    if (readFileSync(lock, 'utf8') === mine) rmSync(lock, { force: true });
  } catch {
    // Gone already, or the folder is: nothing left to release.
  }
}

/**
 * Hold a data folder as a server does, so that none starts meanwhile. Gives what lets it go.
 *
 * Refuses  a folder whose server is running
 */
export async function holdFolder(folder) {
  const holding = createServer();
  await new Promise((resolve, reject) => {
    holding.once('error', reject);
    holding.listen(0, '127.0.0.1', resolve);
  });
  holding.unref();
  await lockFolder(folder, { host: '127.0.0.1', port: holding.address().port });
  return () => holding.close();
}
