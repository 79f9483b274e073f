import 'server-only';
import { randomBytes } from 'node:crypto';
import { closeSync, openSync } from 'node:fs';
import type Sqlite from 'better-sqlite3';
import type { FileWatch } from './file-watch';
import { markFile, noteCommands, readMark, writeMark } from './shop-mark.js';

/** So long after the last write the log is brought into the file; from this size on at once. */
const [QUIET_MS, MOST_LOG_BYTES] = [3_000, 4 * 2 ** 20];

/** A number of the header as the mark writes it. */
function numberText(number: number): string {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32BE(number);
  return bytes.toString('hex');
}

type OpenMark = { handle: number; database: string };

/**
 * Brings what was written from the log into the database's one file: in a quiet moment, when the log has grown, and at
 * the end. SQLite never does so by itself here: whatever changes the file otherwise comes from outside.
 */
export class LogKeeper {
  /** How many commands were ever done here: what is missing of them is damage. */
  commands: number;
  private mark: OpenMark | null = null;
  private quiet: NodeJS.Timeout | null = null;

  constructor(
    private readonly watch: FileWatch,
    private readonly driver: Sqlite.Database,
  ) {
    this.commands = Number(driver.prepare('SELECT count(*) FROM "Command"').pluck().get());
  }

  /**
   * Whether another database lies here than the one that the mark beside it names, or the mark is gone although a program
   * has watched over this one before: then somebody put a backup or a copy here.
   */
  isRestored(): boolean {
    const mark = readMark(this.watch.file);
    if (mark !== null)
      return mark.database !== numberText(Number(this.driver.pragma('user_version', { simple: true })));
    return this.driver.prepare(`SELECT 1 FROM "ClockMark" WHERE "id" = 'latest'`).get() !== undefined;
  }

  /**
   * Give the file a new number, and note it in the mark beside it: from now on a log belongs to this file alone, and
   * what is acknowledged is counted.
   */
  takeOver(): void {
    const database = randomBytes(4).toString('hex');
    this.driver.pragma(`user_version = ${Buffer.from(database, 'hex').readInt32BE()}`);
    this.driver.pragma('wal_checkpoint(TRUNCATE)');
    this.watch.accept();
    writeMark(this.watch.file, { database, commands: this.commands });
    this.mark = { handle: openSync(markFile(this.watch.file), 'r+'), database };
  }

  /** A command is about to be acknowledged: that it was done must never be forgotten. */
  acknowledge(): void {
    this.commands += 1;
    if (this.mark) noteCommands(this.mark.handle, { database: this.mark.database, commands: this.commands });
  }

  /** After each write: bring a log that has grown into the file, and any other as soon as nobody writes. */
  afterWrite(inTurn: (work: () => Promise<void>) => Promise<void>): void {
    if (this.quiet) clearTimeout(this.quiet);
    if (this.watch.logSize === 0) return;
    if (this.watch.logSize > MOST_LOG_BYTES) {
      this.empty();
    } else {
      const later = () => inTurn(async () => this.empty()).catch(() => {});
      this.quiet = setTimeout(later, QUIET_MS).unref();
    }
  }

  /** Whoever reads at this moment may need the log still; then it stays until the next time. */
  private empty(): void {
    if (this.watch.trouble || this.watch.look()) return;
    this.driver.pragma('wal_checkpoint(TRUNCATE)');
    this.watch.accept();
  }

  /**
   * The last thing before the connections close.
   *
   * Gives    whether everything stands in the one file now; false when that is no longer the file that was opened
   */
  finish(): boolean {
    if (this.quiet) clearTimeout(this.quiet);
    if (this.mark) closeSync(this.mark.handle);
    this.mark = null;
    try {
      this.empty();
      return this.watch.trouble === null;
    } catch {
      return false;
    }
  }
}
