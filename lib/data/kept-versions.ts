import 'server-only';
import { allVersionsIn } from './all-versions';
import { byOwner } from './by-owner';
import { type Database, databaseHere, type Rows } from './database';
import { keptHere } from './kept';
import { AT_ONCE, type Pace } from './pace';
import { type RecordVersion, versionsIn } from './record-versions';

/** Versions of records as they were read, and the chain up to where it was read with them. */
type KeptVersions = {
  /** What the file was known by: another one when something else than this program has changed it. */
  foreign: string;
  seal: { number: number; hash: string };
  /** In the order of the records, and of each in the order of its versions. */
  versions: RecordVersion[];
  confirmations: number;
};

const kept = keptHere<KeptVersions>('records', { things: 16, weight: 200_000 });

/**
 * Every version of every record of a shop. Records only grow and each is sealed, so those that were read once are read
 * again only when their chain has another line about them.
 *
 * Takes    what the file is known by, as its marks tell it, and how long the reading may go on without a pause
 */
export async function versionsKept(
  rows: Rows,
  shopId: string,
  foreign: string,
  pace: Pace = AT_ONCE,
): Promise<RecordVersion[]> {
  const known = kept.get(shopId);
  const grown = known?.foreign === foreign ? await grownFrom(rows, shopId, known) : null;
  if (grown) return keep(shopId, grown).versions;
  kept.delete(shopId);
  const last = await rows.recordSeal.findFirst({ where: { shopId }, orderBy: { number: 'desc' } });
  const versions = await allVersionsIn(rows, shopId, pace);
  const counts = await countsIn(rows, shopId);
  if (last) keep(shopId, { foreign, seal: last, versions, confirmations: counts.confirmations });
  return versions;
}

/**
 * The same for whoever is in the middle of a write: what is kept is used, and what was only just written is not kept, since
 * it may be rolled back. Awaits nothing but the rows.
 */
export async function versionsInWrite(rows: Rows, shopId: string): Promise<RecordVersion[]> {
  const [opened, known] = [databaseHere(), kept.get(shopId)];
  const isKnown = opened !== null && known?.foreign === knownBy(opened);
  const grown = isKnown ? await grownFrom(rows, shopId, known) : null;
  return grown?.versions ?? versionsIn(rows, shopId);
}

/** What a file is known by: another text once something else than this program has changed it. */
export const knownBy = ({ file, marks }: Database): string => `${file} ${marks.foreign()}`;

function keep(shopId: string, whole: KeptVersions): KeptVersions {
  kept.set(shopId, whole, whole.versions.length);
  return whole;
}

const countsIn = async (rows: Rows, shopId: string) => ({
  versions: await rows.applicationVersion.count({ where: { shopId } }),
  confirmations: await rows.amendmentConfirmation.count({ where: { shopId } }),
});

/** What is kept with what the chain has grown by. Null when it is another chain, or when a record has no seal yet. */
async function grownFrom(rows: Rows, shopId: string, known: KeptVersions): Promise<KeptVersions | null> {
  const seals = await rows.recordSeal.findMany({
    where: { shopId, number: { gte: known.seal.number } },
    orderBy: { number: 'asc' },
  });
  const [same, ...newer] = seals;
  if (same?.hash !== known.seal.hash) return null;
  const touched = [...new Set(newer.map(({ applicationId }) => applicationId.split('\n')[0] ?? ''))];
  const versions =
    touched.length === 0 ? known.versions : merged(known.versions, await versionsIn(rows, shopId, touched));
  const counts = await countsIn(rows, shopId);
  const confirmations = known.confirmations + newer.filter(({ applicationId }) => applicationId.includes('\n')).length;
  if (counts.versions !== versions.length || counts.confirmations !== confirmations) return null;
  return { foreign: known.foreign, seal: seals.at(-1) ?? same, versions, confirmations };
}

/** Versions with those that were read anew: each record where it stood, and new ones after them. */
function merged(before: readonly RecordVersion[], read: readonly RecordVersion[]): RecordVersion[] {
  const [old, fresh] = [before, read].map((versions) => byOwner(versions, ({ application }) => application));
  const ids = new Set([...before, ...read].map(({ application }) => application));
  return [...ids].flatMap((id) => {
    const newer = fresh?.(id) ?? [];
    return newer.length > 0 ? newer : (old?.(id) ?? []);
  });
}
