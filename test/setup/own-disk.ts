import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** Whether the system's `mount` did what it was asked. */
export const mount = (...args: string[]): boolean => spawnSync('mount', args).status === 0;

/**
 * A disk in memory for the tests of a file, gone after them.
 *
 * Gives    its folder, and whether there is a disk in it: only root on Linux can make one
 */
export function ownDisk(name: string, options: string): { disk: string; hasDisk: boolean } {
  const disk = mkdtempSync(join(tmpdir(), `${name}-`));
  const hasDisk = process.platform === 'linux' && mount('-t', 'tmpfs', '-o', options, 'none', disk);
  afterAll(() => {
    if (hasDisk) spawnSync('umount', ['-l', disk]);
    rmSync(disk, { recursive: true, force: true });
  });
  return { disk, hasDisk };
}
