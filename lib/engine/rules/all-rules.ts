import { atOnce, eachInSteps, type Steps } from '@/shared/steps';
import { benchClosed } from './bench-closed';
import { closedInOpeningHours } from './closed-in-opening-hours';
import { doseOutsideLabel } from './dose-outside-label';
import { byGravity, type Flag } from './flag';
import { lotExpired } from './lot-expired';
import { mixedTooLong } from './mixed-too-long';
import { modeRepeated } from './mode-repeated';
import { mustNotMix } from './must-not-mix';
import { oilNearSulfur } from './oil-near-sulfur';
import { phOutsideRange } from './ph-outside-range';
import { phiReachesHarvest } from './phi-reaches-harvest';
import { reiUnknown } from './rei-unknown';
import { short } from './short';
import { tooHot } from './too-hot';
import { tooManyApplications } from './too-many-applications';
import { tooSoon } from './too-soon';
import { type Turn, turnsInSteps } from './turns';
import type { Unflagged } from './unflagged';
import { unknownCost } from './unknown-cost';
import { unknownExpiry } from './unknown-expiry';
import { unknownNeed } from './unknown-need';

/**
 * Everything in a plan that breaks a rule.
 *
 * Gives  flags by date; on a date the gravest first, then by program, then by rule in the order of their list. What is
 *        on the shelf today comes before the sprayings of the same gravity.
 */
export const flagsOf = (plan: Unflagged): Flag[] => atOnce(flagsInSteps(plan));

/** The same with pauses. */
export function* flagsInSteps(plan: Unflagged): Steps<Flag[]> {
  const turns = yield* turnsInSteps(plan);
  yield;
  return inOrder(yield* eachInSteps(RULES, 1, (rule) => rule(plan, turns)));
}

/** In the order of the list of rules, which the stable sort below keeps. */
const RULES: readonly ((plan: Unflagged, turns: Turn[]) => Flag[])[] = [
  doseOutsideLabel,
  tooManyApplications,
  tooSoon,
  modeRepeated,
  mustNotMix,
  phOutsideRange,
  lotExpired,
  benchClosed,
  closedInOpeningHours,
  reiUnknown,
  short,
  unknownCost,
  unknownExpiry,
  unknownNeed,
  phiReachesHarvest,
  oilNearSulfur,
  tooHot,
  mixedTooLong,
];

/** Sorted day by day: a year's flags are many, but those of one day are few. */
function inOrder(lists: Flag[][]): Flag[] {
  const byDay = new Map<string, Flag[]>();
  for (const flags of lists) {
    for (const flag of flags) {
      const day = byDay.get(flag.on);
      if (day) day.push(flag);
      else byDay.set(flag.on, [flag]);
    }
  }
  return [...byDay.keys()].sort().flatMap((day) => byDay.get(day)?.sort(byGravityAndProgram) ?? []);
}

function byGravityAndProgram(a: Flag, b: Flag): number {
  if (a.severity !== b.severity) return byGravity(a, b);
  const [one, other] = [a.program ?? '', b.program ?? ''];
  return one < other ? -1 : one > other ? 1 : 0;
}
