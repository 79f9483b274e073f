import type { Rows } from './database';

/** A setting of a SQLite connection: its name, the value to set, and what it must read as afterwards. */
export type Pragma = { name: string; set: string; holds: (value: unknown) => boolean; why: string };

const is = (wanted: string) => (value: unknown) => String(value) === wanted;

const WRITE_AHEAD: Pragma = {
  name: 'journal_mode',
  set: 'WAL',
  holds: is('wal'),
  why: 'reading would wait for writing',
};

const REFERENCES: Pragma = {
  name: 'foreign_keys',
  set: 'ON',
  holds: is('1'),
  why: 'a row could refer to nothing',
};

/** Waiting stops the whole process, so it must be short; `write` tries again. */
const SHORT_WAIT: Pragma = {
  name: 'busy_timeout',
  set: '250',
  holds: (value) => Number(value) <= 1000,
  why: 'one locked file would stop every page for longer than a second',
};

const ON_THE_DISK: Pragma = {
  name: 'synchronous',
  set: 'FULL',
  holds: is('2'),
  why: 'a power cut could lose what was already confirmed',
};

/** So that INSERT OR REPLACE cannot pass by the triggers of tables that only grow. */
const TRIGGERS_ALWAYS: Pragma = {
  name: 'recursive_triggers',
  set: 'ON',
  holds: is('1'),
  why: 'a record could be replaced',
};

/** Whatever changes the file otherwise than by `LogKeeper` comes from outside of this program, and is looked at. */
const NEVER_BY_ITSELF: Pragma = {
  name: 'wal_autocheckpoint',
  set: '0',
  holds: is('0'),
  why: 'changes from outside would be taken for its own',
};

const READ_ONLY: Pragma = {
  name: 'query_only',
  set: 'ON',
  holds: is('1'),
  why: 'something could be written outside of the line of commands',
};

export const WRITER_PRAGMAS = [WRITE_AHEAD, ON_THE_DISK, REFERENCES, SHORT_WAIT, TRIGGERS_ALWAYS, NEVER_BY_ITSELF];
export const READER_PRAGMAS = [WRITE_AHEAD, ON_THE_DISK, REFERENCES, SHORT_WAIT, READ_ONLY];

/** Set what a connection is to be like. */
export async function setPragmas(client: Rows, pragmas: readonly Pragma[]): Promise<void> {
  for (const { name, set } of pragmas) await client.$queryRawUnsafe(`PRAGMA ${name} = ${set}`);
}

/** Read the settings back, because SQLite says nothing when one did not take. Throws Error with a sentence. */
export async function refuseWrongPragmas(client: Rows, pragmas: readonly Pragma[], use: string): Promise<void> {
  for (const { name, set, holds, why } of pragmas) {
    const rows = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
    const value = Object.values(rows[0] ?? {})[0];
    if (holds(value)) continue;
    throw new Error(
      `The database connection for ${use} has ${name} = ${value} where ${set} is needed: ${why}. ` +
        'The program does not start like this. Is the data folder on a disk of this machine, and writable?',
    );
  }
}
