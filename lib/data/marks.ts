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
  stateOf(shopId: string): string | null;
  /** How often something else than this program has changed the file. */
  foreign(): number;
  /** Do a write of this program, which changes no shop unless it is a command. */
  ownWrite<T>(work: () => Promise<T>): Promise<T>;
  close(): void;
};

/** Ask a database in a file that is there. One question takes some microseconds. */
export function marksOf(file: string): Marks {
  const connection = new SQLite(file, { readonly: true, fileMustExist: true, timeout: 250 });
  const revision = connection.prepare<[string], number>('SELECT "revision" FROM "Shop" WHERE "id" = ?').pluck();
  // Counts what every other connection commits, this program's own among them.
  const version = () => Number(connection.pragma('data_version', { simple: true }));
  let [seen, foreign, isWriting] = [version(), 0, false];
  const look = () => {
    const now = version();
    if (now !== seen) foreign += 1;
    seen = now;
  };
  return {
    stateOf(shopId) {
      if (!isWriting) look();
      const commands = revision.get(shopId);
      return commands === undefined ? null : `${commands} ${foreign}`;
    },
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
    close: () => connection.close(),
  };
}
