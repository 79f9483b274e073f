import 'server-only';
import { addDays, type Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { shopHere } from '../data/shops';
import type { Alert, AlertKind } from '../engine/alerts/alert';
import { alertsOf } from '../engine/alerts/alerts';
import { dayStrips } from '../engine/keepout/planned-closures';
import type { Flag } from '../engine/rules/flag';
import { oldBackup } from './backups';
import { type BenchStanding, benchStandings } from './bench-standing';
import type { Doubt } from './bench-states';
import { type ComingIn, comingIn, laterOrders } from './coming-in';
import { type DayClock, dayClock } from './day-clock';
import type { Fig } from './figures';
import { flagsInWords } from './flags-by-gravity';
import { type House, houseNow } from './house';
import { type Missed, missedSeen } from './missed-turn';
import { type OrderLine, orderLines } from './order-lines';
import { type SprayingTicket, sprayingTicket, ticketId } from './spraying-ticket';
import { type UnderWaySeen, underWaySeen } from './under-way';
import { type WasteSeen, wasteAhead } from './waste-ahead';

/** A coming day in one line: what is sprayed, and what it costs. */
export type DayAhead = {
  day: Day;
  sprayings: { id: string; recipe: string }[];
  /** Null when nothing is sprayed. */
  materialCost: Fig | null;
  /** How many of its sprayings have a cost that is not known, and so are not in the sum. */
  unknown: number;
  flags: Flag[];
};

export type TodayScreen = Pick<House, 'id' | 'today' | 'now' | 'ways'> & {
  clock: DayClock;
  /** That the last backup is older than a week; null when it is not, and in the demo. */
  oldBackup: string | null;
  /** What is to be told and stands nowhere else on the page. */
  alerts: Alert[];
  benches: BenchStanding[];
  /** Why nothing is told of any bench: the clock, a backup or the books are to be looked at first; null: nothing. */
  doubt: Doubt | null;
  toMix: SprayingTicket[];
  /** What was missed, until somebody says what became of it. */
  missed: Missed[];
  /** What was begun on any device and is not on record. */
  underWay: UnderWaySeen[];
  ahead: DayAhead[];
  orders: OrderLine[];
  /** What was ordered and should be here, comes today, or nobody knows when; and how many orders come later. */
  coming: ComingIn[];
  onItsWay: number;
  waste: WasteSeen[];
  wasteCost: Fig;
  /** What is flagged about the bottles, counted in words; empty when nothing is. */
  shelfFlags: string;
};

/** Today: what to spray, who may stand where, what to order and what is about to be wasted. */
export async function todayScreen(clock: Clock): Promise<TodayScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { today, now, ways, plan, toSpray, figure } = house;
  const strips = dayStrips(house.shop, toSpray, today);
  return {
    ...{ id: house.id, today, now, ways },
    alerts: alertsOf({ ...plan, sprayings: toSpray }, house.benches, now).filter(({ kind }) =>
      ONLY_TOLD.includes(kind),
    ),
    clock: dayClock(house, strips),
    oldBackup: await oldBackupOf(house),
    benches: benchStandings(house, strips.benches),
    doubt: house.benches[0]?.doubt ?? null,
    underWay: underWaySeen(house),
    missed: missedSeen(house),
    toMix: toSpray.filter(({ date }) => date === today).map((spraying) => sprayingTicket(house, spraying)),
    ahead: [1, 2, 3, 4, 5, 6, 7].map((days) => dayAhead(house, addDays(today, days))),
    orders: orderLines(house),
    ...{ coming: comingIn(house), onItsWay: laterOrders(house) },
    waste: wasteAhead(house),
    wasteCost: figure('totals', 'wasteCost'),
    shelfFlags: flagsInWords(plan.flags.filter(({ program }) => program === null)),
  };
}

/** The demo can be made anew at any time. */
async function oldBackupOf({ id, isDemo, now, today, ways }: House): Promise<string | null> {
  const listed = isDemo ? null : await shopHere(id);
  return listed && oldBackup(listed.createdOn, { now, today, zone: ways.zone });
}

/** The others are lines of the page already: what to order, what dies, and until when a bench is closed. */
const ONLY_TOLD: AlertKind[] = ['closed-at-opening', 'label-limit'];

function dayAhead(house: House, day: Day): DayAhead {
  const sprayings = house.plan.sprayings.filter(({ date }) => date === day);
  return {
    day,
    sprayings: sprayings.map((spraying) => ({
      id: ticketId(spraying),
      recipe: spraying.recipe.name,
    })),
    materialCost: sprayings.length > 0 ? house.figure('day', day, 'materialCost') : null,
    unknown: sprayings.filter(({ materialCost }) => materialCost === null).length,
    flags: house.plan.flags.filter(({ on, program }) => on === day && program !== null),
  };
}
