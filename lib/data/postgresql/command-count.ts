import 'server-only';
import { closeSync, mkdirSync, openSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type pg from 'pg';
import type { Keeping } from '../database';
import { databaseFile } from '../database-file';
import { markFile, noteCommands, readMark, writeMark } from '../shop-mark.js';

/** Where the mark of a PostgreSQL database lies: in the data folder of each computer, beside nothing else. */
const besideWhat = (): string => join(dirname(databaseFile()), 'postgresql', 'shop.db');

/**
 * Counts the commands that this program has acknowledged, and notes them in its own data folder. PostgreSQL itself brings what
 * was written from its log into its files, so there is nothing else to keep.
 */
export class CommandCount implements Keeping {
  private handle: number | null = null;

  private constructor(
    readonly database: string,
    public commands: number,
    private readonly isPutBack: boolean,
    private readonly pool: pg.Pool,
  ) {}

  static async of(pool: pg.Pool): Promise<CommandCount> {
    const { rows } = await pool.query<{ identity: string; commands: string; isRestored: boolean }>(
      'SELECT identity, "isRestored", (SELECT count(*) FROM "Command") AS commands FROM kept.outside',
    );
    const [row] = rows;
    return new CommandCount(row?.identity ?? '', Number(row?.commands), row?.isRestored === true, pool);
  }

  /**
   * Whether a backup was put back by the command, or the database holds fewer commands than this program has acknowledged:
   * then somebody put an older state there.
   */
  isRestored(): boolean {
    if (this.isPutBack) return true;
    const mark = readMark(besideWhat());
    return mark !== null && mark.database === this.database && mark.commands > this.commands;
  }

  async takeOver(): Promise<void> {
    if (this.isPutBack) await this.pool.query('UPDATE kept.outside SET "isRestored" = false');
    const file = besideWhat();
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    writeMark(file, this);
    this.handle = openSync(markFile(file), 'r+');
  }

  acknowledge(): void {
    this.commands += 1;
    if (this.handle !== null) noteCommands(this.handle, this);
  }

  afterWrite(): void {}

  finish(): boolean {
    if (this.handle !== null) closeSync(this.handle);
    this.handle = null;
    return true;
  }
}
