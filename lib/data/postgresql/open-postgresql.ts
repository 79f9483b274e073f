import 'server-only';
import type { Beside, Database, Keeping, Watching } from '../database';
import { withoutAccount } from '../postgresql-address.js';
import { acceptingThrough } from './accept-rows';
import { CommandCount } from './command-count';
import { connectReader, connectWriter } from './connections';
import { marksHere, type Seen } from './marks-here';

/**
 * Open the PostgreSQL database that holds the shops. It was brought up to date before. A server that does not answer later
 * is asked again by each question, so nothing has to be started anew when it comes back.
 *
 * Takes    for another thread of a program that has it open already: its turn to write, and what tells of each commit
 * Throws   what the driver says when the server does not answer
 */
export async function openPostgresql(url: string, beside?: Beside): Promise<Omit<Database, 'close'>> {
  const [{ client: reader, pool: reads }, { client: writer, pool: writes }] = [connectReader(url), connectWriter(url)];
  const seen: Seen = { changes: '0', accepted: '0' };
  const marks = marksHere(reads, writes, seen);
  try {
    await marks.look();
    seen.accepted = seen.changes;
    const count = await CommandCount.of(writes);
    const [file, keeper] = [withoutAccount(url), beside ? counting(count, beside) : count];
    const line = beside?.turn ?? Promise.resolve();
    const accepting = acceptingThrough(reader);
    // Each transaction has a connection of its own here.
    const longReader = () => Promise.resolve(reader);
    const watch = watching(file, seen);
    return { file, inode: 0n, writer, reader, longReader, accepting, marks, watch, keeper, line };
  } catch (error) {
    await Promise.all([reader, writer].map((client) => client.$disconnect())).catch(() => {});
    throw error;
  }
}

/** A thread counts nothing by itself: the program that it belongs to does. */
const counting = (count: CommandCount, { onCommit }: Beside): Keeping => ({
  ...{ commands: count.commands, isRestored: () => false, takeOver: () => {}, acknowledge: onCommit },
  ...{ afterWrite: () => {}, finish: () => true },
});

/**
 * PostgreSQL watches over its own files. What is watched here is whether anything else than this program has changed what is
 * in them, as far as the marks have last seen it.
 */
function watching(file: string, seen: Seen): Watching {
  const signs = () => ({ main: { ino: 0n, dev: 0n, size: 0n, mtimeNs: BigInt(seen.changes) }, log: null });
  const look = () => seen.changes !== seen.accepted;
  return {
    ...{ file, trouble: null, logSize: 0, signs, look, prove: look },
    ...{ begin: () => {}, end: () => {}, close: () => {} },
    accept(known = signs()) {
      seen.accepted = String(known.main.mtimeNs);
    },
  };
}
