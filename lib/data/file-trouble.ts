import { restoreAdvice } from './backup-files.js';
import { databaseFile } from './database-file';

/**
 * Why nothing can be written now: the disk is full, the file may only be read, another program holds it, or it is
 * damaged.
 */
export type Cause = 'full' | 'read-only' | 'locked' | 'damaged';

/** Something is wrong with the file of the database. Its message is for the person: what, and what to do. */
export class FileTrouble extends Error {
  constructor(
    readonly why: Cause,
    wrong: string,
  ) {
    super(`${wrong} ${why === 'damaged' ? wayBack() : WHAT_TO_DO[why]}`);
    this.name = 'FileTrouble';
  }
}

/** The files themselves are best, where they were only taken away; otherwise the newest sound backup, by its name. */
const wayBack = (): string =>
  `Put its files back if they were taken away, or go back to a backup. ${restoreAdvice(databaseFile(), process.env)} ` +
  'Until then, keep out of every bench.';

const WHAT_TO_DO: Record<Exclude<Cause, 'damaged'>, string> = {
  full: 'Make room on that disk, then try again: nothing need be started anew.',
  'read-only': 'Make it writable, then try again.',
  locked: 'Close the other program that has it open, then try again.',
};

/** What SQLite or the system said, and what that means. The first that fits counts. */
const MEANINGS: [said: RegExp, why: Cause, wrong: (file: string) => string][] = [
  [/SQLITE_FULL|database or disk is full|ENOSPC|EDQUOT/, 'full', (file) => `The disk that holds ${file} is full.`],
  [
    /SQLITE_READONLY|readonly database|EROFS|SQLITE_PERM|EACCES|EPERM/,
    'read-only',
    (file) => `The database ${file} cannot be written: it, its folder or its disk may only be read.`,
  ],
  [
    /SQLITE_BUSY|SQLITE_LOCKED|database is locked|\bP1008\b|SocketTimeout/,
    'locked',
    (file) => `Another program holds the database ${file}.`,
  ],
  [
    /SQLITE_CORRUPT|SQLITE_NOTADB|malformed|not a database/,
    'damaged',
    (file) => `The database ${file} is damaged, and SQLite cannot read all of it.`,
  ],
  [
    /SQLITE_IOERR|SQLITE_CANTOPEN|disk I\/O error|unable to open database|EIO/,
    'damaged',
    (file) => `The database ${file} cannot be read or written: the disk or the folder does not answer.`,
  ],
];

/** What an error says about the file of the database; null when it is about something else. */
export function fileTrouble(error: unknown, file: string): FileTrouble | null {
  if (isFileTrouble(error)) return error;
  const said = saidBy(error);
  const meaning = MEANINGS.find(([word]) => word.test(said));
  return meaning ? new FileTrouble(meaning[1], `${meaning[2](file)} Nothing was changed.`) : null;
}

/** Pages and routes are built apart, each with a class of its own; the open database, which throws it, is one for all. */
const isFileTrouble = (error: unknown): error is FileTrouble =>
  error instanceof Error && error.name === 'FileTrouble' && 'why' in error;

/** Everything that an error of the client, the driver or the system says of its cause. */
function saidBy(error: unknown): string {
  const { code, message, meta, cause } = error as Partial<Record<'code' | 'message' | 'meta' | 'cause', unknown>>;
  return [code, message, JSON.stringify(meta ?? ''), JSON.stringify(cause ?? '')].map(String).join(' ');
}
