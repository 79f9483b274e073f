import 'server-only';
import type { Clock } from '@/lib/clock';
import { shopFileOf } from '@/lib/data/snapshot';
import type { SettleSpraying } from '@/shared/forms/settle-spraying';
import { type Outcome, refuse } from '@/shared/outcome';
import { Day } from '@/shared/time/day';
import { readInstant } from '@/shared/time/instant';
import { readLocalTime } from '@/shared/time/local-time';
import { Zone } from '@/shared/time/zone';
import { denySpraying } from './deny-spraying';
import { recordApplication } from './record-application';
import { tellSpraying } from './tell-spraying';

type Settled = Omit<SettleSpraying, 'shop'> & { shopId: string; actor?: string };

/**
 * Say what became of a spraying that was begun and is not on record: it ended; it ended, and goes on record without
 * amounts; or nothing was sprayed.
 *
 * Refuses  'not-found' when nothing is under way by that id; 'faults' for an end or a reason that is missing; and what the
 *          commands behind it refuse
 */
export async function settleSpraying(said: Settled, clock: Clock): Promise<Outcome<object>> {
  const { commandId, shopId, actor, spraying, became, reason } = said;
  const file = await shopFileOf(shopId);
  const its = (file.underWay ?? []).find(({ id }) => id === spraying);
  const startedAt = its && readInstant(its.startedAt);
  if (!its || !startedAt?.ok) return refuse({ code: 'not-found', what: 'spraying', id: spraying });
  if (became === 'never') {
    if (reason === '') return missing('reason', 'Write how you know that nothing was sprayed.');
    return denySpraying({ commandId, shopId, spraying, reason, ...(actor && { actor }) }, clock);
  }
  const ended = readLocalTime(said.endedAt, Zone.parse(file.shop.timeZone));
  if (!ended.ok) return missing('endedAt', ended.message);
  if (ended.value < startedAt.value) return missing('endedAt', 'That is before it began. Write when it ended.');
  const { benches } = its;
  const of = { commandId, shopId, ...(actor && { actor }), recipe: its.recipe ?? '', benches, spraying };
  const times = { startedAt: startedAt.value, endedAt: ended.value };
  if (became === 'recorded') return recordApplication({ ...of, ...times }, clock);
  const planned = its.program !== null && its.on !== null ? { program: its.program, on: Day.parse(its.on) } : null;
  return tellSpraying({ ...of, ...times, planned, by: its.by, passed: its.passed }, clock);
}

const missing = (path: string, message: string) => refuse({ code: 'faults', faults: [{ path, message }] });
