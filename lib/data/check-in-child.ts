import { spawn } from 'node:child_process';
import type { WholeCheck } from './whole-check';

/** Check a whole database in a process of its own, so that nobody waits for it here. */
export function checkInChild(file: string): Promise<WholeCheck> {
  const args = ['--import', 'tsx', '--conditions=react-server', 'lib/data/check-script.ts', file];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  const chunks: { out: Buffer[]; wrong: Buffer[] } = { out: [], wrong: [] };
  child.stdout.on('data', (chunk) => chunks.out.push(chunk));
  child.stderr.on('data', (chunk) => chunks.wrong.push(chunk));
  return new Promise((resolve) => {
    const failed = (why: string) =>
      resolve({ file: [`It could not be checked (${why}).`], rows: [], records: [], commands: 0 });
    child.once('error', (error) => failed(error.message));
    child.once('close', (code, signal) => {
      if (code === 0) resolve(JSON.parse(Buffer.concat(chunks.out).toString('utf8')));
      else failed(Buffer.concat(chunks.wrong).toString('utf8').trim().split('\n').at(-1) ?? `${code ?? signal}`);
    });
  });
}
