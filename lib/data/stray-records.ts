import 'server-only';
import { database } from './database';
import type { Marks } from './marks';

/** What was found of a database as it stood; whoever changes it changes the version. */
type Looked = { version: number | string; stray: boolean };

/** By the connection that was asked: each connection counts its versions from the start. */
const looked = new WeakMap<Marks, Looked>();

/**
 * Whether a line of the application records has lost what it belongs to: an application without its versions, a version
 * without its benches or its application, a bench or a product of a record that is not there. Reading such records by
 * shop would simply leave them out, and a bench that was sprayed would look as if it never was.
 *
 * Looked for again whenever the database has changed since.
 */
export async function recordsAreStray(): Promise<boolean> {
  const { marks } = await database();
  // Asked before the look, so that what is written meanwhile is looked for the next time.
  const version = await marks.version();
  const known = looked.get(marks);
  if (known?.version === version) return known.stray;
  const stray = Number(await marks.value(STRAY)) !== 0;
  looked.set(marks, { version, stray });
  return stray;
}

/** Whether a table has a line that another one does not know. A key that is NULL is known nowhere. */
const lost = (table: string, other: string, keys: readonly (readonly [string, string])[]): string => {
  const on = keys.map(([own, theirs]) => `o."${theirs}" = t."${own}"`).join(' AND ');
  return `EXISTS (SELECT 1 FROM "${table}" t WHERE NOT EXISTS (SELECT 1 FROM "${other}" o WHERE ${on}))`;
};

const APPLICATION = [
  ['shopId', 'shopId'],
  ['applicationId', 'id'],
] as const;
const VERSION = [
  ['shopId', 'shopId'],
  ['applicationId', 'applicationId'],
  ['number', 'number'],
] as const;
const SHOP = [['shopId', 'id']] as const;

const STRAY = `SELECT (${[
  lost('Application', 'Shop', SHOP),
  lost('Application', 'ApplicationVersion', [
    ['shopId', 'shopId'],
    ['id', 'applicationId'],
  ]),
  lost('ApplicationVersion', 'Application', APPLICATION),
  lost('ApplicationVersion', 'ApplicationBench', VERSION),
  lost('ApplicationBench', 'ApplicationVersion', VERSION),
  lost('ApplicationProduct', 'ApplicationVersion', VERSION),
  lost('AmendmentConfirmation', 'ApplicationVersion', VERSION),
  lost('ApplicationBench', 'Bench', [
    ['shopId', 'shopId'],
    ['benchId', 'id'],
  ]),
  lost('ApplicationProduct', 'Product', [
    ['shopId', 'shopId'],
    ['productId', 'id'],
  ]),
  lost('Bench', 'Shop', SHOP),
].join(' OR ')}) AS stray`;
