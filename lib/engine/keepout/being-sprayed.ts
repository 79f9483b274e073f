import { addMinutes, type Instant } from '@/shared/time/instant';
import type { Application, UnderWay } from '../shop';

/** No spraying takes longer than this, in minutes. One that was begun before and has no end was forgotten. */
const LONGEST_SPRAYING = 4 * 60;

/** Whether this was begun and is not on record yet. */
export const isUnderWay = (record: Application): record is UnderWay => 'planned' in record;

/** Whether somebody is spraying it now, as far as was told: it was begun a few hours ago at most, and has no end. */
export const isBeingSprayed = (record: Application, now: Instant): boolean =>
  isUnderWay(record) && record.endedAt === null && now < addMinutes(record.startedAt, LONGEST_SPRAYING);
