import 'server-only';
import { NO_HASH, type Sealable, sealedName, sealText } from '@/lib/engine/record/seal-text';
import type { Rows } from './database';
import { dialectHere } from './dialect';
import { insertMany } from './insert-many';
import { type Ask, lastSealIn, sealableIn, sealedUnder } from './sealed-rows';
import { sha256 } from './sha256';
import { small, toStored } from './whole';
import type { Stamp } from './writer';

/** Asks through a connection of the client, or a transaction on it. */
export function askThrough(rows: Pick<Rows, '$queryRawUnsafe'>): Ask {
  const dialect = dialectHere();
  const ask = (sql: string, ...values: string[]): Promise<Record<string, unknown>[]> =>
    rows.$queryRawUnsafe(dialect.withPlaces(sql), ...values);
  return Object.assign(ask, { dialect });
}

/** What a command has just written: a version of a record, or the confirmation of one. */
export type Written = { kind: Sealable['kind']; application: string; version: number };

/**
 * Seal what a command has written, in the same transaction: a line of the chain for each, in the order given. What is
 * sealed is read back, so that it is what the database really holds.
 */
export async function sealWritten(rows: Rows, stamp: Stamp, written: readonly Written[]): Promise<void> {
  const ask = askThrough(rows);
  const applications = [...new Set(written.map(({ application }) => application))];
  const things = await sealableIn(ask, { shopId: stamp.shopId, applications });
  const named = new Map(things.map((thing) => [sealedName(thing), thing]));
  const wanted = written.map((one) => named.get(sealedName({ ...one, version: `${one.version}` })) ?? missing(one));
  const last = await lastSealIn(ask, stamp.shopId);
  await insertMany(rows, 'RecordSeal', sealRows(stamp.shopId, stamp.recordedAt, last, wanted));
}

function missing({ kind, application, version }: Written): never {
  throw new RangeError(`seal: ${kind} ${version} of record ${application} was not written`);
}

/** The rows of the next lines of a chain. */
export function sealRows(
  shopId: string,
  sealedAt: number,
  last: { number: string; hash: string } | null,
  things: readonly Sealable[],
) {
  let previousHash = last?.hash ?? NO_HASH;
  let number = Number(last?.number ?? 0);
  return things.map((thing) => {
    number += 1;
    const hash = sha256(sealText({ number: `${number}`, previousHash, sealedAt: `${sealedAt}` }, thing));
    const line = {
      shopId,
      number: small(number),
      applicationId: sealedUnder(thing),
      version: small(Number(thing.version)),
    };
    const row = { ...line, previousHash, hash, sealedAt: toStored(sealedAt) };
    previousHash = hash;
    return row;
  });
}
