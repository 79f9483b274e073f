import 'server-only';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type Sqlite from 'better-sqlite3';
import { giveReadableCells } from './readable-cells';
import { sealWhatIsWritten } from './row-seals';

/**
 * Connections that seal every row they write. The client opens them itself, and anew when it has to, so each one gets
 * its triggers as it is opened.
 */
export class SealingConnections extends PrismaBetterSqlite3 {
  private opened: Sqlite.Database | null = null;

  /** The driver's own connection, for what the client has no words for. Throws before it is opened. */
  get driver(): Sqlite.Database {
    if (!this.opened) throw new RangeError('connection: it is not open yet');
    return this.opened;
  }

  override async connect() {
    const connection = await super.connect();
    this.opened = driverOf(connection);
    sealWhatIsWritten(this.opened);
    giveReadableCells(this.opened);
    return connection;
  }
}

/** Connections that only read. A value of the wrong kind stops none of their answers. */
export class ReadingConnections extends PrismaBetterSqlite3 {
  override async connect() {
    const connection = await super.connect();
    giveReadableCells(driverOf(connection));
    return connection;
  }
}

/** The driver's connection inside of the client's. A version of the client that keeps it elsewhere does not start. */
function driverOf(connection: object): Sqlite.Database {
  const driver: unknown = Reflect.get(connection, 'client');
  if (!isDriver(driver)) throw new Error('The database client keeps its connection where it is not looked for.');
  return driver;
}

const isDriver = (value: unknown): value is Sqlite.Database =>
  typeof value === 'object' && value !== null && 'prepare' in value && 'function' in value && 'pragma' in value;
