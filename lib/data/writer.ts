import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Instant } from '@/shared/time/instant';
import { followMark } from './clock-mark';
import { type Database, database, type Rows } from './database';
import { fileTrouble } from './file-trouble';
import { fingerprint } from './fingerprint';
import { sureOfFile } from './found-damage';
import { manyBottles } from './many-bottles';
import { newId } from './new-id';
import { opensEarlier, shopBefore } from './opening-guard';
import { readAgain } from './read-again';
import { Touched } from './touched';

/** A command as it is sent: everything that decides its answer, and the id that makes it one. */
export type Command = {
  /** Made with the form, so that sending it again is the same command. */
  id: string;
  name: string;
  /** Null for a command that makes a shop: it gets an id of its own. */
  shopId: string | null;
  body: unknown;
  /** The shop as it stands, where whoever sends the command has read it and nothing has changed since. */
  before?: ShopFile;
  /** How many commands it had had then. Another process may write between the look and this command. */
  atRevision?: number;
  /** The instant the command speaks of, when it speaks of one. */
  spokenAt?: Instant;
  actor?: string;
};

/** What every row that a command writes carries: whose it is, who wrote it, with which command and when. */
export type Stamp = {
  shopId: string;
  commandId: string;
  actor: string;
  recordedAt: Instant;
  /** What is written with it is noted here, and read again before it is kept. */
  touched: Touched;
  /** Lots that it puts on the shelf: so many bottles of which pack. */
  came: { product: string; pack: string; count: number }[];
  /** The token of what the request has confirmed so far; one request may have to confirm two things. */
  confirmed?: string;
};

/** Plain data: what can be stored as an answer and given again. */
export type Plain = string | number | boolean | null | Plain[] | { [field: string]: Plain };

/**
 * Do one command: decide and save in one transaction, after every command that came before it, and once only.
 *
 * The same id with the same body is answered as it was the first time. A refused command leaves nothing behind, not even
 * its id: sending it again decides it anew, because what stood in its way may be gone.
 *
 * Takes    the command, the instant it is recorded at, and the work. The work awaits nothing but the rows it is given:
 *          anything else would let another request's statement slip into this transaction
 * Refuses  'same-key-other-body' when the id was already used for something else; 'cannot-be-read' when what was written
 *          could not be read again as a shop file; 'opens-earlier' when a bench would open earlier, and 'many-bottles' when
 *          over 500 come at once, and nobody has confirmed it; 'disk-full' and 'not-writable' with what is wrong with the database's file; and what the work refuses
 */
export async function write<T extends Plain>(
  command: Command,
  recordedAt: Instant,
  work: (rows: Rows, stamp: Stamp) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const faults = heldTo(['actor', PIECES.who, command.actor ?? OWNER]);
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const hash = fingerprint([command.name, command.shopId, command.body]);
  try {
    return await inTurn((opened) => once(opened, command, hash, recordedAt, work));
  } catch (error) {
    const trouble = fileTrouble(error);
    if (!trouble) throw error;
    return refuse({ code: trouble.why === 'full' ? 'disk-full' : 'not-writable', said: trouble.message });
  }
}

/**
 * Have a command written by another thread, on a connection of its own, after every command that came before, and look
 * for it in the file before anybody is told that it was done.
 *
 * Takes    the work, which gives its answer and whether it has committed a command
 */
export function writtenBeside<T>(work: () => Promise<{ answer: T; isWritten: boolean }>): Promise<T> {
  return inTurn(async (opened) => {
    const { answer, isWritten } = await work();
    if (isWritten) await acknowledge(opened);
    return answer;
  });
}

/** Write something that is no command, after every command that came before it. It awaits nothing but the rows. */
export async function inTurn<T>(work: (opened: Database) => Promise<T>): Promise<T> {
  const opened = await database();
  const turn = opened.line.then(() => persistently(() => opened.marks.ownWrite(() => watched(opened, work))));
  opened.line = turn.catch(() => {});
  return turn;
}

/** Write to a file that is known to be sound, and watch it meanwhile. */
async function watched<T>(opened: Database, work: (opened: Database) => Promise<T>): Promise<T> {
  const { watch, keeper } = opened;
  await sureOfFile(opened);
  watch.begin();
  try {
    return await work(opened);
  } finally {
    watch.end();
    keeper.afterWrite((emptying) => inTurn(emptying));
  }
}

/** Thrown to roll the transaction back with an answer that changes nothing. */
type Rollback<T> = { rollback: Outcome<T> };

async function once<T extends Plain>(
  opened: Database,
  command: Command,
  bodyHash: string,
  recordedAt: Instant,
  work: (rows: Rows, stamp: Stamp) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const shopId = command.shopId ?? newId();
  const made = { touched: new Touched(), came: [] };
  const stamp: Stamp = { shopId, commandId: command.id, actor: command.actor ?? OWNER, recordedAt, ...made };
  try {
    const done = await opened.writer.$transaction(async (rows) => {
      // A write comes first, so that the transaction holds the file from its first statement and never has to upgrade.
      await rows.shop.updateMany({ where: { id: shopId }, data: { revision: { increment: 1 } } });
      const before = await rows.command.findUnique({ where: { id: command.id } });
      if (before) throw back<T>(before.bodyHash === bodyHash ? accept(asAnswer<T>(before.answer)) : SAME_KEY);
      if (await isAhead(rows, command)) throw back(refuse({ code: 'shop-changed-since-preview' }));
      const shop = await shopBefore(rows, command);
      const outcome = await work(rows, stamp);
      if (!outcome.ok) throw back(outcome);
      const many = manyBottles(stamp, command);
      if (many) throw back(refuse(many));
      const read = await readAgain(rows, shopId, stamp.touched);
      if (read.unread) throw back(refuse(read.unread));
      const early = await opensEarlier(rows, stamp, { before: shop, after: read.file }, command);
      if (early) throw back(refuse(early));
      const answer = asAnswer<T>(JSON.parse(JSON.stringify(outcome.value)));
      await keepAnswer(rows, stamp, command, { bodyHash, answer: [answer] });
      await followMark(rows, recordedAt);
      return accept(answer);
    }, PATIENCE);
    await acknowledge(opened);
    return done;
  } catch (thrown) {
    if (isRollback<T>(thrown)) return thrown.rollback;
    throw thrown;
  }
}

/** How many commands a shop had had in the state that its marks name; undefined where there is none. */
export const revisionIn = (state: string | null | undefined): number | undefined =>
  state ? Number(state.split(' ')[0]) : undefined;

/** Whether a command speaks of a shop that has changed since. Asked while nobody else writes to the shop. */
async function isAhead(rows: Rows, { shopId, atRevision }: Command): Promise<boolean> {
  if (shopId === null || atRevision === undefined) return false;
  const shop = await rows.shop.findUnique({ where: { id: shopId }, select: { revision: true } });
  return shop !== null && Number(shop.revision) !== atRevision + 1;
}

/** Look for what was committed in the file at its path, before anybody is told that it was done. */
async function acknowledge(opened: Database): Promise<void> {
  if (opened.watch.prove()) await sureOfFile(opened);
  opened.keeper.acknowledge();
}

/** Keep a command with its answer, so that the same id is answered as it was. */
async function keepAnswer(
  rows: Rows,
  { shopId, actor, recordedAt }: Stamp,
  { id, name, spokenAt }: Command,
  answered: { bodyHash: string; answer: Plain[] },
): Promise<void> {
  const moments = { spokenAt: spokenAt === undefined ? null : BigInt(spokenAt), recordedAt: BigInt(recordedAt) };
  await rows.command.create({ data: { id, shopId, name, actor, ...moments, ...answered } });
}

/** Whoever sends a command without a name. */
const OWNER = 'owner';

const SAME_KEY = refuse({ code: 'same-key-other-body' });

/** An import of a large shop takes seconds; nothing else in the process waits for longer than it. */
const PATIENCE = { maxWait: 10_000, timeout: 120_000 };

const back = <T>(rollback: Outcome<T>): Rollback<T> => ({ rollback });

const isRollback = <T>(thrown: unknown): thrown is Rollback<T> =>
  typeof thrown === 'object' && thrown !== null && 'rollback' in thrown;

/** An answer is stored in a list of one, because a column cannot tell the answer `null` from none. */
const asAnswer = <T extends Plain>(stored: unknown): T => (Array.isArray(stored) ? stored[0] : stored) as T;

/** Try again, a few times and shortly, when another process holds the file or was faster. */
async function persistently<T>(attempt: () => Promise<T>): Promise<T> {
  for (const pause of PAUSES_MS) {
    try {
      return await attempt();
    } catch (error) {
      if (!isLostRace(error)) throw error;
      await new Promise((resume) => setTimeout(resume, pause));
    }
  }
  return attempt();
}

const PAUSES_MS = [20, 100, 300];

/** P1008: the file is busy. P2034, 40001, 40P01: lost against another transaction. P2002 on the command: sent twice at once. */
function isLostRace(error: unknown): boolean {
  const { code, meta, cause, message } = error as Partial<Record<'code' | 'meta' | 'cause' | 'message', unknown>>;
  if (code === 'P1008' || code === 'P2034') return true;
  if (code === 'P2002') return JSON.stringify(meta ?? '').includes('Command');
  const original = (cause as { originalCode?: unknown } | undefined)?.originalCode;
  if (original === '40001' || original === '40P01') return true;
  return String(original).startsWith('SQLITE_BUSY') || /database is locked/.test(String(message));
}
