import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * The test files in a folder and those within it.
 *
 * @param {string} folder from the root, with forward slashes
 * @returns {string[]} paths from the root
 */
export const testsUnder = (folder) =>
  readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.test\.tsx?$/.test(name))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`);
