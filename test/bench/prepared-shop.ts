import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/** Which shop: the demo; 200 products × 60 programs × 40 benches; and that one with years of records and movements. */
export type ShopKind = 'demo' | 'large' | 'long';

/**
 * A database with a shop of a kind in a folder, made by a process of its own, so that the one that measures carries none
 * of it.
 *
 * Gives    how long bringing the shop in took, ms
 */
export async function preparedShop(kind: ShopKind, folder: string, moment: string): Promise<{ importMs: number }> {
  const script = join(import.meta.dirname, 'prepare-shop.ts');
  const run = spawnSync(process.execPath, ['--import', 'tsx', '--conditions=react-server', script, kind, moment], {
    env: { ...process.env, DATA_DIR: folder },
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`the shop could not be made:\n${run.stderr}`);
  return { importMs: Number(run.stdout.trim()) };
}
