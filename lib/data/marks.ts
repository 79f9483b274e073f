import SQLite from 'better-sqlite3';

/**
 * What shows whether a shop has changed, asked for on a connection of its own. The connection that reads shops may stand
 * in the middle of an older transaction, and would answer as of that moment; this one tells what was committed last.
 */
export type Marks = {
  /**
   * The state of a shop: another one after each command, in whatever process, and after anything else that another
   * program has changed in the file. Null when there is no such shop.
   */
  stateOf(shopId: string): Soon<string | null>;
  /** The states of all shops together: another text once there is another shop, or one of them has changed. */
  stateOfAll(): Soon<string>;
  /** Another one after each write to the shops, of this program too. */
  version(): Soon<number | string>;
  /** The one value that a query gives, as of what was committed last. */
  value(sql: string): Soon<unknown>;
  /** Ask how often others have changed anything, where `foreign` cannot ask by itself. */
  look(): Soon<void>;
  /** How often something else than this program has changed anything. Asked for without waiting. */
  foreign(): number;
  /** Tell the other processes at the same database what a check has found, so that they look as well when it is news. */
  tell(found: string): Soon<void>;
  /** Do a write of this program, which changes no shop unless it is a command. */
  ownWrite<T>(work: () => Promise<T>): Promise<T>;
  close(): void;
};

/** At once from a file, a moment later from a server. */
type Soon<T> = T | Promise<T>;

type Asked = {
  version: () => number;
  value: (sql: string) => unknown;
  close: () => void;
  revision: (shopId: string) => number | undefined;
  revisions: () => string;
};

function asking(file: string): Asked {
  const connection = new SQLite(file, { readonly: true, fileMustExist: true, timeout: 250 });
  const one = connection.prepare<[string], number>('SELECT "revision" FROM "Shop" WHERE "id" = ?').pluck();
  const all = connection.prepare<[], { id: string; revision: number }>(
    'SELECT "id", "revision" FROM "Shop" ORDER BY "id"',
  );
  return {
    revision: (shopId) => one.get(shopId),
    revisions: () =>
      all
        .all()
        .map(({ id, revision }) => `${id} ${revision}`)
        .join(','),
    // Counts what every other connection commits, this program's own among them.
    version: () => Number(connection.pragma('data_version', { simple: true })),
    value: (sql) => connection.prepare(sql).pluck().get(),
    close: () => connection.close(),
  };
}

/** Ask a database in a file that is there. One question takes some microseconds. */
export function marksOf(file: string): Marks {
  const { revision, revisions, version, value, close } = asking(file);
  let [seen, foreign, isWriting] = [version(), 0, false];
  const look = () => {
    const now = version();
    if (now !== seen) foreign += 1;
    seen = now;
  };
  return {
    stateOf(shopId) {
      if (!isWriting) look();
      const commands = revision(shopId);
      return commands === undefined ? null : `${commands} ${foreign}`;
    },
    stateOfAll() {
      if (!isWriting) look();
      return `${foreign} ${revisions()}`;
    },
    version,
    value,
    look: () => {},
    tell: () => {},
    foreign() {
      if (!isWriting) look();
      return foreign;
    },
    async ownWrite(work) {
      look();
      isWriting = true;
      try {
        return await work();
      } finally {
        seen = version();
        isWriting = false;
      }
    },
    close,
  };
}
