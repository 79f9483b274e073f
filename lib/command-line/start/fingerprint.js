import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * One line that stands for the content of files and whole folders: two copies with the same line were made from the
 * same sources. Content counts, not dates, since copying and version control change those at will.
 */
export function fingerprint(root, paths) {
  const hash = createHash('sha256');
  for (const path of paths.flatMap((start) => filesUnder(root, start)).sort()) {
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(root, path)))
      .update('\0');
  }
  return hash.digest('hex');
}

function filesUnder(root, path) {
  const full = join(root, path);
  if (!existsSync(full)) return [];
  if (!statSync(full).isDirectory()) return [path];
  return readdirSync(full).flatMap((name) => filesUnder(root, `${path}/${name}`));
}

/** Whether something was made from exactly these sources: its stamp says so. */
export function isFresh(stamp, mark) {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === mark;
}

export function stampWith(stamp, mark) {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, mark);
}
