import { type BigIntStats, closeSync, openSync, readSync, statSync } from 'node:fs';
import { FileTrouble } from './file-trouble';
import { type Followed, followLog } from './log-proof';
import { numberIn } from './shop-mark.js';

/** What a file on the disk is known by. */
type Sign = Pick<BigIntStats, 'ino' | 'dev' | 'size' | 'mtimeNs'>;

/** What the two files of a database are known by: the database itself, and the log of its newest writes. */
type Signs = { main: Sign; log: Sign | null };

/**
 * Watches the files of an open database from outside of SQLite, which would go on in a file that was cut, overwritten,
 * taken away or replaced under it. A look takes some microseconds, so everybody who reads looks first.
 *
 * Reading other handles of the database here would release SQLite's locks when they are closed, so the one handle that
 * reads its header stays open as long as the database is.
 */
export class FileWatch {
  readonly file: string;
  private readonly handle: number;
  private readonly opened: { main: Sign; log: Sign | null; shared: Sign | null };
  private number: string | null;
  private noted: Signs;
  private followed: Followed | null;
  private isWriting = false;
  private found: FileTrouble | null = null;

  /** Takes a database that SQLite has already opened. */
  constructor(file: string) {
    this.file = file;
    this.handle = openSync(file, 'r');
    this.opened = { ...this.signs(), shared: signOf(`${file}-shm`) };
    this.number = this.header();
    this.noted = this.signs();
    this.followed = followLog(`${file}-wal`, null);
  }

  /** What was found wrong with the file, for good: nothing is read from it or written to it any more. */
  get trouble(): FileTrouble | null {
    return this.found;
  }

  /**
   * Look at the files.
   *
   * Gives    true when something other than this program has changed them: then the whole database is to be checked
   * Throws   FileTrouble when they are no longer the files that were opened, or when the header is damaged
   */
  look(): boolean {
    if (this.found) throw this.found;
    const wrong = this.wrong();
    if (wrong) {
      this.found = new FileTrouble('damaged', wrong);
      throw this.found;
    }
    const now = this.signs();
    if (!isSame(now.main, this.noted.main)) return true;
    return !this.isWriting && !isSame(now.log, this.noted.log);
  }

  private wrong(): string | null {
    const [now, shared] = [this.signs(), signOf(`${this.file}-shm`)];
    const [file, log] = [this.file, `${this.file}-wal`];
    if (!isFile(now.main, this.opened.main))
      return `The database ${file} was taken away or replaced while it was open.`;
    if (now.main.size === 0n) return `The database ${file} was emptied while it was open.`;
    if (this.number === null || this.header() !== this.number) {
      return `The beginning of the database ${file} was overwritten while it was open.`;
    }
    if (this.opened.log && !(now.log && isFile(now.log, this.opened.log))) {
      return `The log of the newest writes, ${log}, was taken away or replaced while the database was open.`;
    }
    if (this.opened.shared && !(shared && isFile(shared, this.opened.shared))) {
      return `${file}-shm was taken away or replaced while the database was open.`;
    }
    return null;
  }

  /** A write begins: until it ends, the log grows. */
  begin(): void {
    this.isWriting = true;
  }

  /**
   * Look for a transaction that was just committed in the log at its path.
   *
   * Gives    whether the whole database is to be checked, as `look` does
   * Throws   FileTrouble when it is not there
   */
  prove(): boolean {
    const isMoved = this.look();
    const before = this.followed;
    const now = followLog(`${this.file}-wal`, before);
    const isThere = now !== null && now.commits > (now.salts === before?.salts ? before.commits : 0);
    if (!isThere) {
      this.found = new FileTrouble('damaged', `What was written is not in the file ${this.file}-wal.`);
      throw this.found;
    }
    this.followed = now;
    return isMoved;
  }

  /** A write has ended, well or not. What it did to the log is known from then on; it never changes the database itself. */
  end(): void {
    this.isWriting = false;
    this.followed = followLog(`${this.file}-wal`, this.followed);
    this.noted = { ...this.noted, log: signOf(`${this.file}-wal`) };
  }

  /** Take the files as they are now: after this program has changed them, or after a check has found them sound. */
  accept(signs: Signs = this.signs()): void {
    this.noted = signs;
    this.number = this.header();
    this.followed = followLog(`${this.file}-wal`, null);
  }

  signs(): Signs {
    const main = signOf(this.file) ?? GONE;
    return { main, log: signOf(`${this.file}-wal`) };
  }

  /** How many bytes of newest writes stand in the log. */
  get logSize(): number {
    return Number(signOf(`${this.file}-wal`)?.size ?? 0n);
  }

  private header(): string | null {
    const bytes = Buffer.alloc(100);
    return numberIn(bytes.subarray(0, readSync(this.handle, bytes, 0, 100, 0)));
  }

  /** Only once SQLite has closed the file. */
  close(): void {
    closeSync(this.handle);
  }
}

const GONE: Sign = { ino: 0n, dev: 0n, size: 0n, mtimeNs: 0n };

const signOf = (file: string): Sign | null => statSync(file, { bigint: true, throwIfNoEntry: false }) ?? null;

const isFile = (one: Sign, other: Sign): boolean => one.ino === other.ino && one.dev === other.dev;

const isSame = (one: Sign | null, other: Sign | null): boolean =>
  one?.size === other?.size && one?.mtimeNs === other?.mtimeNs && one?.ino === other?.ino;
