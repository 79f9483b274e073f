import 'server-only';
import type { Clock } from '@/lib/clock';
import { NEITHER } from '@/lib/data/readable-cells';
import { savePutRight } from '@/lib/data/save-put-right';
import { rawShop } from '@/lib/data/shop-rows';
import { write } from '@/lib/data/writer';
import { canonical } from '@/lib/engine/exchange/canonical';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { withValueAt } from '@/shared/shop-file/mend';
import { type RawShop, readWhatCanBe } from '@/shared/shop-file/read-what-can-be';
import { Settings } from '@/shared/shop-file/settings';
import { THINGS } from '@/shared/shop-file/things';
import { type UnreadThing, unreadIn } from '@/shared/shop-file/unread';

/** A value that cannot be read, by its place in its thing, and what it is to be; null for unknown. */
type RightValue = { path: string; is: string | null };

export type PutRight = {
  commandId: string;
  shopId: string;
  actor?: string;
  list: UnreadThing['list'];
  id: string;
  values: RightValue[];
  /** How it is known. It stays on record. */
  reason: string;
};

/** What was put right: each value as it was and as it is now, written as in a shop file. */
export type WasRight = { list: string; id: string; was: { path: string; was: string; is: string }[]; reason: string };

/**
 * Put one thing right that cannot be read: each of its odd values becomes one that a shop file may hold, or unknown. A
 * record is amended, and its old version stays. Who did it, when, and what stood there stays on record as the answer.
 *
 * Refuses  'not-found' when nothing of that name is unread; 'faults', each at the value's path, for what no shop file may
 *          hold, and at `reason`; 'cannot-be-read' for what stands in books that only grow: those come back by a backup
 */
export async function putRight(input: PutRight, clock: Clock): Promise<Outcome<WasRight>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'putRight', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const { list, id, values } = input;
    const faults = heldTo(['reason', PIECES.reason, input.reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const raw = await rawShop(rows, shopId);
    const unread = raw && unreadIn(readWhatCanBe(raw)).find((one) => one.list === list && one.id === id);
    if (!raw || !unread || unread.isCaused) return refuse({ code: 'not-found', what: 'unreadable thing', id });
    const ledger = unread.list === 'lots' && unread.odd.find(({ path }) => path === 'remaining');
    if (ledger) return refuse({ code: 'faults', faults: [{ path: ledger.path, message: OF_LEDGER }] });
    const amended = withValues(raw, unread, values);
    const unsaid = unread.odd.filter(({ path, is }) => is === NEITHER && !(said(valueFor(values, path)) in YES_NO));
    const wrong = [...unsaid.map(({ path }) => ({ path, message: SAY_WHICH })), ...faultsOf(amended, unread)];
    if (wrong.length > 0) return refuse({ code: 'faults', faults: wrong });
    const file = canonical(readWhatCanBe(amended));
    await savePutRight(rows, stamp, { file, list, id, reason: `put right: ${input.reason}` });
    const was = unread.odd.map(({ path, is }) => ({ path, was: said(is), is: said(valueFor(values, path)) }));
    return accept({ list, id, was, reason: input.reason });
  });
}

const OF_LEDGER =
  'The lines of its ledger come to this, and they only grow. Restore a backup: Setup names the newest sound one.';

const SAY_WHICH = 'Say yes or no: both can be true, and nothing tells which.';
const YES_NO: Readonly<Record<string, boolean>> = { '"yes"': true, '"no"': false };

const said = (value: unknown): string => JSON.stringify(value) ?? 'nothing';

const valueFor = (values: readonly RightValue[], path: string): string | null =>
  values.find((one) => one.path === path)?.is ?? null;

/** The shop with a thing's odd values as they are to be. What was a number is one again. */
function withValues(raw: RawShop, unread: UnreadThing, values: readonly RightValue[]): RawShop {
  const { list, id, odd } = unread;
  const put = (thing: unknown): unknown => {
    let now = thing;
    for (const { path, at, is } of odd) {
      const text = valueFor(values, path);
      const isNumber = typeof is === 'number' && text !== null && /^-?\d+(\.\d+)?$/.test(text);
      const right = is === NEITHER ? YES_NO[said(text)] : isNumber ? Number(text) : text;
      now = withValueAt(now, at, right ?? null);
    }
    return now;
  };
  if (list === 'shop') return { ...raw, shop: put(raw.shop) };
  return { ...raw, [list]: raw[list].map((thing) => (thing.id === id ? put(thing) : thing)) };
}

/** What would still be wrong with the thing, at the places where it is. */
function faultsOf(raw: RawShop, { list, id }: UnreadThing): Fault[] {
  const thing = list === 'shop' ? raw.shop : raw[list].find((one) => one.id === id);
  const contract = list === 'shop' ? Settings : THINGS[list];
  const read = contract.safeParse(thing);
  if (!read.success && list === 'shop') {
    return read.error.issues.map(({ path, message }) => ({ path: path.join('.'), message }));
  }
  const left = unreadIn(readWhatCanBe(raw)).find((one) => one.list === list && one.id === id);
  const odd = left?.odd ?? [];
  return odd
    .filter(({ path }, place) => odd.findIndex((one) => one.path === path) === place)
    .map(({ path, message }) => ({ path, message }));
}
