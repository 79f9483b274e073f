import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { quickFolder } from '../run/quick-folder.js';
import { TODAY } from './demand-table';
import { generatedShop } from './generated-shop';

const ROOT = join(import.meta.dirname, '../..');
const WEEKS = 104;

/*
 * The command on a chain of shops: 2,000 products, 500 weekly programs, 104 weeks. How long each verb takes, how much it
 * prints, and the most memory that its process ever held. It reports; it never fails on a figure.
 */

/** Report on each verb. Needs /proc, which only Linux has. */
export async function reportOnLargeFile(): Promise<void> {
  if (!existsSync('/proc/self/status')) return console.log('\nThe memory of a command is measured on Linux alone.');
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-bench-'));
  const file = join(folder, 'large.json');
  writeFileSync(file, JSON.stringify(generatedShop({ products: 2_000, programs: 500, benches: 50 })));
  console.log(`\nThe command on 2,000 products × 500 weekly programs × ${WEEKS} weeks:`);
  const weeks = ['--today', TODAY, '--weeks', String(WEEKS)];
  await reportOn('check', [file]);
  await reportOn('plan', [file, ...weeks]);
  await reportOn('plan, flags once', [file, ...weeks, '--flags', 'once']);
  await reportOn('buy', [file, ...weeks]);
  await reportOn('equivalents', [file, ...weeks, '--recipe', 'r0', '--product', 'p0']);
  rmSync(folder, { recursive: true, force: true });
}

async function reportOn(name: string, [file = '', ...options]: string[]): Promise<void> {
  const verb = name.split(',')[0] ?? name;
  const started = performance.now();
  // With a limit of its own the command works in this process, whose memory can be looked at.
  const args = ['--max-old-space-size=800', 'lib/command-line/shop.js', verb, file, ...options];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] });
  let [bytes, most] = [0, 0];
  child.stdout.on('data', (chunk: Buffer) => {
    bytes += chunk.length;
  });
  const looking = setInterval(() => {
    most = Math.max(most, mostHeld(child.pid));
  }, 100);
  const code = await new Promise((resolve) => child.once('close', resolve));
  clearInterval(looking);
  const seconds = ((performance.now() - started) / 1_000).toFixed(1).padStart(7);
  console.log(
    `  ${name.padEnd(18)} ${seconds} s, ${most.toFixed(0).padStart(5)} MB at most, ${(bytes / 1e6).toFixed(1)} MB printed${code === 0 ? '' : `, ended with ${code}`}`,
  );
}

/** The most memory that a process has held so far, MB. */
function mostHeld(pid: number | undefined): number {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1_024;
  } catch {
    return 0;
  }
}
