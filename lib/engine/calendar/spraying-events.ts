import type { CalendarEvent } from '@/shared/ical/calendar-file';
import { addMinutes, isInstant } from '@/shared/time/instant';
import { showUntil } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import { counts } from '../keepout/counting';
import { reopensAfter } from '../keepout/reopening';
import { type PlannedTurn, plannedTurn } from '../mix/planned-turn';
import { benchNames } from '../rules/in-words';
import type { Application, Shop, SprayingChange } from '../shop';
import { type CalendarFacts, marksOf, nameOfSpraying, turnName, uidOf } from './calendar-facts';

/** A planned spraying, from its start to its end. */
export function sprayingEvent(shop: Shop, facts: CalendarFacts, spraying: Spraying, isDue: boolean): CalendarEvent {
  const { program, recipe, startsAt, endsAt, reopensAt } = spraying;
  const fact =
    startsAt > facts.now ? 'Planned.' : isDue ? 'It was due and is not on record.' : 'It was planned for then.';
  return {
    uid: uidOf('spraying', nameOfSpraying(spraying), facts),
    ...{ startsAt, endsAt, cancelled: false },
    summary: `Spray ${recipe.name} on ${benchNames(program.benches)}`,
    description: [fact, closedFor(shop, isDue ? null : reopensAt, startsAt), GOVERNS].join('\n'),
    ...marksOf(shop, facts, isDue ? spraying : null),
  };
}

/** What is said of every spraying, since a calendar is read far from the label. */
const GOVERNS = 'The label governs.';

function closedFor({ zone }: Shop, until: Spraying['reopensAt'], startsAt: Spraying['startsAt']): string {
  const from = dayOf(zone, startsAt);
  return until === null
    ? 'KEEP OUT from its start; until when is not known: keep out.'
    : `KEEP OUT from its start until ${showUntil(until, zone, from)} (clock of ${zone}).`;
}

/**
 * A turn that was done, or skipped: then its keep-out is cancelled with it. That of a done one is its record's. Nothing
 * when the program no longer has the turn.
 */
export function changedTurnEvents(
  shop: Shop,
  facts: CalendarFacts,
  program: string,
  change: SprayingChange,
): CalendarEvent[] {
  const turn = plannedTurn(shop, program, change.on);
  if (!turn.ok || change.kind === 'moved') return [];
  const record = shop.applications.find(({ id }) => id === change.application) ?? null;
  const isDone = change.kind === 'done' && (record === null || counts(record));
  const told = isDone ? doneOf(shop, turn.value, record) : leftOut(turn.value);
  const kinds = change.kind === 'skipped' ? (['spraying', 'keep-out'] as const) : (['spraying'] as const);
  const name = turnName(program, change.on);
  return kinds.map((kind) => ({ uid: uidOf(kind, name, facts), ...told, ...marksOf(shop, facts, null) }));
}

type Told = Pick<CalendarEvent, 'startsAt' | 'endsAt' | 'summary' | 'description' | 'cancelled'>;

function doneOf(shop: Shop, turn: PlannedTurn, record: Application | null): Told {
  const { startsAt, endsAt } = timesOf(turn, record);
  const benches = benchNames(record?.benches ?? turn.program.benches);
  const recipe = record?.recipe.name ?? turn.recipe.name;
  const closed = record ? closedFor(shop, reopensAfter(record), startsAt) : null;
  return {
    ...{ startsAt, endsAt, cancelled: false },
    summary: `Sprayed ${recipe} on ${benches}`,
    description: ['On record.', closed, GOVERNS].filter((line) => line !== null).join('\n'),
  };
}

/** As recorded; a record without an end that can be read lasts as long as was planned. */
function timesOf({ program, startsAt, endsAt }: PlannedTurn, record: Application | null) {
  if (record === null || !isInstant(record.startedAt)) return { startsAt, endsAt };
  const { startedAt, endedAt } = record;
  const ended = endedAt !== null && isInstant(endedAt) && endedAt >= startedAt ? endedAt : null;
  return { startsAt: startedAt, endsAt: ended ?? addMinutes(startedAt, program.duration) };
}

const leftOut = ({ program, recipe, startsAt, endsAt, became }: PlannedTurn): Told => ({
  ...{ startsAt, endsAt, cancelled: true },
  summary: `Left out: ${recipe.name} on ${benchNames(program.benches)}`,
  description: became === 'done' ? 'Its record was entered in error.' : 'This spraying was skipped.',
});
