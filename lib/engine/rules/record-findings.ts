import { showMinutes } from '@/shared/measure/show';
import { isInstant } from '@/shared/time/instant';
import type { Application, Shop } from '../shop';
import type { RuleName, Severity } from './flag';
import { ageBeyond, toBeUsedWithin } from './mixed-too-long';
import { heatFindings } from './too-hot';

/** What a record says that ought not to have been, whatever was planned. */
export type RecordFinding = { rule: RuleName; severity: Severity; message: string };

/**
 * What can be told from a record alone: the heat in which it was sprayed, and how old the spray was when the last of it
 * was out, from its mixing on, or where nobody noted that from its start.
 *
 * Gives    nothing of what nobody noted
 */
export function recordFindings(shop: Shop, application: Application): RecordFinding[] {
  const { recipe, temperatureC } = application;
  const heat = temperatureC === null ? [] : heatFindings(shop, recipe, temperatureC);
  return [
    ...heat.map(({ severity, message }): RecordFinding => ({ rule: 'too-hot', severity, message: message() })),
    ...ageFindings(application),
  ];
}

function ageFindings({ recipe, startedAt, mixedAt, endedAt }: Application): RecordFinding[] {
  const mixed = mixedAt ?? startedAt;
  if (endedAt === null || !isInstant(endedAt) || !isInstant(mixed)) return [];
  const age = ageBeyond(recipe, mixed, endedAt);
  if (age === null) return [];
  const since = mixedAt === null ? 'at least ' : '';
  const message = `The spray was ${since}${showMinutes(age)} old when the last of it was out, and ${toBeUsedWithin(recipe)}.`;
  return [{ rule: 'mixed-too-long', severity: 'warn', message }];
}
