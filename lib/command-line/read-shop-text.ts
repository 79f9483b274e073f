import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import { type Reading, read, unreadable } from '@/shared/outcome';
import { LARGEST_FILE, TOO_LARGE } from '@/shared/shop-file/parse';
import { shown } from '@/shared/shop-file/path';

/**
 * The text of a shop file.
 *
 * Takes    the name as it was typed, or - for standard input; the folder it was typed in
 * Refuses  what is not there, cannot be opened or is a folder; more than 20 MB, of which no more is read than that;
 *          what is not text in UTF-8
 */
export async function readShopText(file: string, folder: string): Promise<Reading<string>> {
  const source = file === '-' ? process.stdin : createReadStream(resolve(folder, file));
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of source) {
      size += chunk.length;
      if (size > LARGEST_FILE) return unreadable(TOO_LARGE);
      chunks.push(chunk);
    }
  } catch (error) {
    return unreadable(cannotRead(file, error));
  } finally {
    source.destroy();
  }
  return decoded(file, Buffer.concat(chunks));
}

function decoded(file: string, bytes: Buffer): Reading<string> {
  const noText = `${nameOf(file)} is not a text file in UTF-8. Give the shop file as it was exported, or save it as UTF-8.`;
  if (bytes.includes(0)) return unreadable(noText);
  try {
    return read(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return unreadable(noText);
  }
}

function cannotRead(file: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  const name = nameOf(file);
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return `There is no file ${name}. Write the name of a shop file, or - for standard input.`;
  if (code === 'EISDIR') return `${name} is a folder. Write the name of a shop file in it.`;
  if (code === 'EACCES' || code === 'EPERM')
    return `${name} may not be read by this account. Give it that right, or another file.`;
  return `${name} cannot be read (${String(code)}). Write the name of another file, or - for standard input.`;
}

const nameOf = (file: string): string => (file === '-' ? 'Standard input' : shown(file));
