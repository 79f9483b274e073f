import type { Day } from '@/shared/time/day';
import { isUnderWay } from '../engine/keepout/being-sprayed';
import { withoutInterval } from '../engine/keepout/reopening';
import type { EntryPlace } from '../engine/rules/to-enter';
import type { Standing } from './bench-states';

/** What a person can do so that it is known when a bench reopens: in words, and where. */
export type WayOut = { words: string; at: EntryPlace | MixList };

/** A list of sprayings on Mix. */
type MixList = 'under-way' | 'missed' | 'due';

/**
 * What somebody can enter or say of a bench that is kept out of without a known end. The clock and the records in doubt
 * have their own words on the board.
 *
 * Gives   each once: what became of a spraying, the end of a record, then the intervals that are missing
 */
export function waysOutOf({ state, because, unrecorded, toCome, doubt }: Standing, today: Day): WayOut[] {
  if (state !== 'unknown' || doubt !== null) return [];
  const ways: WayOut[] = [];
  if (because.some((record) => isUnderWay(record))) ways.push({ words: 'Say what became of it', at: 'under-way' });
  if (unrecorded.some(({ date }) => date < today)) {
    ways.push({ words: 'Say what became of it', at: 'missed' });
  } else if (unrecorded.length > 0) {
    ways.push({ words: 'Mix it, or look at it', at: 'due' });
  }
  for (const record of because) {
    if (isUnderWay(record)) continue;
    if (toCome.includes(record)) ways.push({ words: 'Put the record right', at: { of: 'record', id: record.id } });
    else if (record.endedAt === null) ways.push({ words: 'Note its end', at: { of: 'record', id: record.id } });
  }
  const recipes = [...because, ...unrecorded].map(({ recipe }) => recipe);
  for (const { id, name } of new Set(recipes.flatMap(withoutInterval))) {
    ways.push({ words: `Enter the interval of ${name}`, at: { of: 'product', id, field: 'label.reiHours' } });
  }
  return ways;
}
