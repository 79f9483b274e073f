import 'server-only';
import { reasonGiven } from '@/lib/confirmation';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { type EarlierOpening, earlierOpenings } from '@/lib/engine/keepout/earlier-openings';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { Refusal } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { showDayUntil } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Rows } from './database';
import { fingerprint } from './fingerprint';
import { shopInWrite } from './shop-in-write';
import { toStored, toStoredOrNull } from './whole';
import type { Command, Stamp } from './writer';

/** Commands about bottles, links and messages alone: they write nothing that a bench's state rests on. */
const BESIDE_BENCHES: ReadonlySet<string> = new Set([
  ...['correctLastDay', 'countContainer', 'discardStock', 'drawStock', 'moveContainer', 'openContainer'],
  ...['receiveLot', 'reverseMovement', 'shutContainer', 'keepSafetySheet', 'makeSharedLink', 'revokeSharedLink'],
  ...['noteAlertsSent', 'saveAlertSettings', 'confirmClock'],
]);

/** Say a second time that an amendment, or what could not be read, is right; or ask by themselves. They are asked nothing more. */
const CONFIRMATIONS: ReadonlySet<string> = new Set(['confirmAmendment', 'putRight', 'acceptRows', 'acceptRecords']);

/** Commands that write records, and judge by themselves whether one comes so late that its interval is over. */
const RECORDING: ReadonlySet<string> = new Set(['finishMix', 'recordApplication', 'amendApplication']);

/** The shop before a command; null for one that can open no bench, and for one that makes the shop. */
export async function shopBefore(rows: Rows, { name, shopId, before }: Command): Promise<Shop | null> {
  if (shopId === null || CONFIRMATIONS.has(name) || BESIDE_BENCHES.has(name)) return null;
  return before ? shopOfFile(before) : readShop(rows, shopId);
}

/**
 * Whether a command that has written its rows opens a bench earlier than it would have opened: then it is to be rolled
 * back, unless the request carries the word of a person who was shown these benches. That goes on record: who, when, why,
 * and both ends.
 *
 * Takes    the rows of the command's own transaction; the shop before it as `shopBefore` gave it, and after it where it
 *          was read already
 * Gives    the refusal; null when nothing opens earlier, or it is confirmed
 */
export async function opensEarlier(
  rows: Rows,
  stamp: Stamp,
  { before, after: file }: { before: Shop | null; after: ShopFile | null },
  { name }: Command,
): Promise<Refusal | null> {
  if (!before) return null;
  const after = file ? shopOfFile(file) : await readShop(rows, stamp.shopId);
  if (!after) return null;
  const openings = earlierOpenings(before, after, stamp.recordedAt, { atOnce: RECORDING.has(name) });
  return confirmedOrAsked(rows, stamp, after, openings);
}

/**
 * The same for a command after which a shop whose rows were in doubt is believed again: every bench was kept out of, and
 * each of which something is known then opens.
 */
export async function opensByDoubt(rows: Rows, stamp: Stamp): Promise<Refusal | null> {
  const shop = await readShop(rows, stamp.shopId);
  if (!shop) return null;
  const now = stamp.recordedAt;
  const states = keepOut(shop, now, unrecordedSprayings(shop, now));
  const openings = states.flatMap(({ bench, state, until }) =>
    state === 'unknown' ? [] : [{ bench, wasUntil: null, opensAt: until ?? now, isKeptClosed: false }],
  );
  return confirmedOrAsked(rows, stamp, shop, openings);
}

async function confirmedOrAsked(
  rows: Rows,
  stamp: Stamp,
  after: Shop,
  openings: readonly EarlierOpening[],
): Promise<Refusal | null> {
  if (openings.length === 0) return null;
  const token = tokenOf(openings, stamp);
  const reason = reasonGiven(token);
  if (reason === null) {
    const said = openings.map((one) => inWords(one, after, stamp));
    // What was confirmed already is confirmed once more with it.
    return { code: 'opens-earlier', token: [stamp.confirmed ?? [], token].flat().join('+'), openings: said };
  }
  await rows.earlierOpening.createMany({ data: openings.map((one) => ({ ...rowOf(one, stamp), reason })) });
  return null;
}

async function readShop(rows: Rows, shopId: string): Promise<Shop | null> {
  const file = await shopInWrite(rows, shopId);
  return file && shopOfFile(file);
}

/** The same for the same benches with the same ends. What opens at once opens whenever it is confirmed. */
const tokenOf = (openings: readonly EarlierOpening[], { recordedAt }: Stamp): string =>
  fingerprint(
    openings.map(({ bench, wasUntil, opensAt }) => [bench.id, wasUntil, opensAt <= recordedAt ? 'now' : opensAt]),
  );

function inWords(
  { bench, wasUntil, opensAt, isKeptClosed }: EarlierOpening,
  { zone }: Shop,
  { recordedAt }: Stamp,
): string {
  const today = dayOf(zone, recordedAt);
  const was =
    wasUntil === null ? 'KEEP OUT, not known until when' : `KEEP OUT until ${showDayUntil(wasUntil, zone, today)}`;
  const atOnce = isKeptClosed ? 'open as soon as nothing else keeps it closed' : 'open at once';
  const is = opensAt <= recordedAt ? atOnce : `KEEP OUT until ${showDayUntil(opensAt, zone, today)}`;
  return `${bench.name}: now ${was}; then ${is}.`;
}

const rowOf = ({ bench, wasUntil, opensAt }: EarlierOpening, { shopId, commandId, actor, recordedAt }: Stamp) => ({
  ...{ shopId, commandId, benchId: bench.id, wasUntil: toStoredOrNull(wasUntil), opensAt: toStored(opensAt) },
  ...{ actor, recordedAt: toStored(recordedAt) },
});
