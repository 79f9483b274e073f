import type { SprayingBody } from '../api/spraying-bodies';
import { instantOf, instantText } from '../time/instant';
import type { MixProgress } from './mix-progress';

/** What goes to `POST /api/v1/mix/spraying`, but for the id of that one telling. */
export type SprayingTelling = Omit<SprayingBody, 'commandId'>;

/**
 * What the shop has to know of a mix while it is sprayed: since when, on which benches, and until when. Null before
 * spraying began, and while no bench is named.
 */
function sprayingOf(progress: MixProgress): SprayingTelling | null {
  const { plan, sprayingSince, sprayingUntil, apart, turn } = progress;
  const benches = sprayedBenches(progress);
  if (sprayingSince === null || benches.length === 0) return null;
  return {
    ...{ shop: plan.shopId, spraying: progress.commandId, recipe: plan.recipe.id, benches },
    planned: apart ? null : (plan.planned ?? turn),
    startedAt: instantText(instantOf(sprayingSince), plan.zone),
    endedAt: sprayingUntil === null ? null : instantText(instantOf(sprayingUntil), plan.zone),
    by: progress.answers.by.trim().slice(0, LONGEST_NAME) || null,
    passed: Object.entries(progress.reasons).flatMap(([rule, reason]) =>
      RULE.test(rule) && reason.trim() !== '' ? [{ rule, reason: reason.trim().slice(0, LONGEST_REASON) }] : [],
    ),
  };
}

const LONGEST_NAME = 200;
const LONGEST_REASON = 500;
/** Reasons for leaving something out stand under a name of their own, and say nothing of the benches. */
const RULE = /^[a-z-]{1,60}$/;

/** The benches that are sprayed, with those that take what is left over. */
export const sprayedBenches = ({ benches, leftoverBenches, answers }: MixProgress): string[] => [
  ...new Set([...benches, ...(answers.leftover.trim() === '' ? [] : leftoverBenches)]),
];

/** The same in one text: what the shop was told last is kept as this. */
export const tellingText = (telling: SprayingTelling): string => JSON.stringify(telling);

/** What the shop does not know yet of a mix that is being sprayed, or was. Null where it knows all, or has its record. */
export function untold(progress: MixProgress): SprayingTelling | null {
  const telling = progress.state === 'sent' ? null : sprayingOf(progress);
  return telling && tellingText(telling) !== progress.told ? telling : null;
}
