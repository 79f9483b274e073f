import 'server-only';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

let name: string | null | undefined;

/** The name of the build that answers, which no other build has. Null where a developer's server answers, which has none. */
export function buildName(): string | null {
  if (name === undefined) name = process.env.NODE_ENV === 'production' ? readName() : null;
  return name;
}

function readName(): string | null {
  try {
    const folder = process.env.BUILD_DIR || '.next';
    return readFileSync(join(/* turbopackIgnore: true */ process.cwd(), folder, 'BUILD_ID'), 'utf8').trim();
  } catch {
    return null;
  }
}
