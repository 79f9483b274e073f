import { restoreAdvice } from './backup-files.js';
import { databaseName } from './database-address';
import { databaseFile } from './database-file';

/**
 * Why nothing can be written now: the disk is full, the database may only be read, another program holds it, it is damaged,
 * or its server does not answer.
 */
export type Cause = 'full' | 'read-only' | 'locked' | 'damaged' | 'away';

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
  away: 'Start it, or mend the way to it; nothing need be started anew here. Until then, keep out of every bench.',
  locked: 'Close the other program that has it open, then try again.',
};

/** A server that refuses or ends a connection, or gives no answer in time: of the network, the driver, the client, PostgreSQL. */
const AWAY =
  /ECONNREFUSED|ECONNRESET|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|EPIPE|DatabaseNotReachable|ConnectionClosed|Connection terminated|connection timeout|timeout exceeded when trying to connect|Query read timeout|not queryable|Client was closed|\bP1001\b|\bP1017\b|57P0[1-3]|TooManyConnections|"53300"|the database system is|not currently accepting connections|AuthenticationFailed|DatabaseDoesNotExist|"28P01"|"3D000"/;

/** What SQLite, PostgreSQL or the system said, and what that means. The first that fits counts. */
const MEANINGS: [said: RegExp, why: Cause, wrong: (file: string) => string][] = [
  [AWAY, 'away', (file) => `The server of the database ${file} does not answer.`],
  [
    /SQLITE_FULL|database or disk is full|ENOSPC|EDQUOT|"53100"|No space left on device/,
    'full',
    (file) => `The disk that holds ${file} is full.`,
  ],
  [
    /SQLITE_READONLY|readonly database|EROFS|SQLITE_PERM|EACCES|EPERM|"25006"|"42501"/,
    'read-only',
    (file) => `The database ${file} cannot be written: it, its folder or its disk may only be read.`,
  ],
  [
    /SQLITE_BUSY|SQLITE_LOCKED|database is locked|\bP1008\b|SocketTimeout/,
    'locked',
    (file) => `Another program holds the database ${file}.`,
  ],
  [
    /SQLITE_CORRUPT|SQLITE_NOTADB|database disk image is malformed|not a database|"XX00[0-2]"/,
    'damaged',
    (file) => `The database ${file} is damaged, and not all of it can be read.`,
  ],
  [
    /SQLITE_IOERR|SQLITE_CANTOPEN|disk I\/O error|unable to open database|EIO/,
    'damaged',
    (file) => `The database ${file} cannot be read or written: the disk or the folder does not answer.`,
  ],
];

/** What an error says about the file of the database; null when it is about something else. */
export function fileTrouble(error: unknown, file = databaseName()): FileTrouble | null {
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
