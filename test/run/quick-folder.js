import { existsSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';

const IN_MEMORY = '/dev/shm';
const ENOUGH_BYTES = 2 ** 30;

/**
 * Where tests keep their databases: in memory where the system offers room there, else where temporary files go. A
 * command waits until the disk has what it wrote, and what a test wrote need not outlive the test.
 */
export function quickFolder() {
  if (!existsSync(IN_MEMORY)) return tmpdir();
  const { bavail, bsize } = statfsSync(IN_MEMORY);
  return bavail * bsize > ENOUGH_BYTES ? IN_MEMORY : tmpdir();
}
