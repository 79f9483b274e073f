import 'server-only';
import { showClockTime } from '@/shared/time/clock-time';
import { type Day, readDay } from '@/shared/time/day';
import { showClock, showDay, showInstant } from '@/shared/time/show-day';
import { clockOf } from '@/shared/time/zone';
import { newCommandId } from '../data/new-id';
import { type ClearMove, clearMoves } from '../engine/ahead/clear-moves';
import type { Spraying } from '../engine/ahead/plan';
import { ownDay } from '../engine/ahead/program-turns';
import { plannedTurn } from '../engine/mix/planned-turn';
import type { House } from './house';

/** A place to which a spraying can be moved in one step, as a form sends it. */
export type MoveTo = { commandId: string; day: Day; at: string; words: string };

/** What can be moved of one spraying, and where to. */
export type SprayingMove = {
  shop: string;
  program: string;
  recipe: string;
  /** The day on which its program has it. */
  on: Day;
  day: Day;
  at: string;
  commandId: string;
  /** Starts that keep customers clear of it, when it is closed in opening hours. */
  clear: MoveTo[];
  /** Where its program has it, when it was moved from there. */
  back: MoveTo | null;
};

const WHY: Record<ClearMove['why'], string> = {
  before: 'nearest clear start before',
  after: 'nearest clear start after',
  'in-time': 'reopens just in time for the next opening',
};

/** Where one spraying may go. */
export function sprayingMove({ id, shop, today, now }: House, spraying: Spraying): SprayingMove {
  const { program, recipe, date, occurrence, startsAt } = spraying;
  const { zone } = shop;
  const on = ownDay(program, date, occurrence);
  const place = (instant: Spraying['startsAt']) => {
    const { day, minuteOfDay } = clockOf(zone, instant);
    return { commandId: newCommandId(), day, at: showClockTime(minuteOfDay) };
  };
  const isMoved = program.changes.some((change) => change.on === on && change.kind === 'moved');
  const own = showClockTime(program.startMinute);
  const isBackPast = on < today;
  const { day, at } = place(startsAt);
  return {
    ...{ shop: id, program: program.id, recipe: recipe.name, on, day, at, commandId: newCommandId() },
    clear: clearMoves(shop, spraying, now).map(({ why, startsAt: start }) => ({
      ...place(start),
      words: `${showClock(start, zone, date)}, ${WHY[why]}`,
    })),
    back:
      isMoved && !isBackPast && (on !== day || own !== at)
        ? { commandId: newCommandId(), day: on, at: own, words: `${showDay(on, today)} ${own}` }
        : null,
  };
}

/** What was just moved, as the address of the page tells it: from where, to where, and what undoes it. */
export type JustMoved = {
  recipe: string;
  to: string;
  was: MoveTo;
  move: Pick<SprayingMove, 'shop' | 'program' | 'on'>;
};

export type MovedAsked = { moved?: string | undefined; on?: string | undefined; was?: string | undefined };

/** What was just moved; null when the address tells nothing that is so. */
export function justMoved({ id, shop, today }: House, { moved, on, was }: MovedAsked): JustMoved | null {
  const [, wasOn = '', at] = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)$/.exec(was ?? '') ?? [];
  const [own, before] = [readDay(on ?? ''), readDay(wasOn)];
  if (moved === undefined || at === undefined || !own.ok || !before.ok) return null;
  const turn = plannedTurn(shop, moved, own.value);
  if (!turn.ok || turn.value.became !== null) return null;
  return {
    recipe: turn.value.recipe.name,
    to: showInstant(turn.value.startsAt, shop.zone, today),
    was: { commandId: newCommandId(), day: before.value, at, words: `${showDay(before.value, today)} ${at}` },
    move: { shop: id, program: moved, on: own.value },
  };
}
