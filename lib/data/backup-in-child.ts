import { type ChildProcess, spawn } from 'node:child_process';
import { setPriority } from 'node:os';
import type { Made } from './make-backup';

/** A backup that was made, or why it could not be. */
export type BackedUp = { ok: true; made: Made } | { ok: false; message: string };

const running = new Set<ChildProcess>();
process.once('exit', () => {
  for (const child of running) child.kill();
});

/**
 * Make a backup in a process of its own, with low priority, so that nobody waits for it here. It ends with this process.
 *
 * Takes    the database, the moment in milliseconds, and a folder; without one, the folder of the running shop
 */
export function backupInChild(database: string, madeAt: number, folder?: string): Promise<BackedUp> {
  const script = ['--import', 'tsx', '--conditions=react-server', 'lib/data/backup-script.ts'];
  const args = [...script, database, `${madeAt}`, ...(folder === undefined ? [] : [folder])];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  running.add(child);
  lowerPriority(child);
  const chunks: { out: Buffer[]; wrong: Buffer[] } = { out: [], wrong: [] };
  child.stdout.on('data', (chunk) => chunks.out.push(chunk));
  child.stderr.on('data', (chunk) => chunks.wrong.push(chunk));
  return new Promise((resolve) => {
    const end = (result: BackedUp) => {
      running.delete(child);
      resolve(result);
    };
    child.once('error', (error) => end({ ok: false, message: error.message }));
    child.once('close', (code, signal) => {
      if (code === 0) return end({ ok: true, made: JSON.parse(Buffer.concat(chunks.out).toString('utf8')) });
      const said = Buffer.concat(chunks.wrong).toString('utf8').trim().split('\n').at(-1);
      end({ ok: false, message: said || `It ended with ${code ?? signal}.` });
    });
  });
}

/** Where the system refuses it, the backup runs like everything else. */
function lowerPriority({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) setPriority(pid, 10);
  } catch {
    // Nothing depends on it.
  }
}
