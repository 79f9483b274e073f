import { z } from 'zod';
import { commandId, shopId } from './command-fields';

/** How far ahead may be bought for. */
export const PLAN_WEEKS = [26, 52, 104] as const;

/** The seconds that a search may take. */
export const SEARCH_SECONDS = [5, 10, 30, 60] as const;

const oneOf = (choices: readonly number[], unit: string) =>
  z
    .enum(choices.map(String), { error: `Choose ${choices.slice(0, -1).join(', ')} or ${choices.at(-1)} ${unit}.` })
    .transform(Number);

const weeks = () => oneOf(PLAN_WEEKS, 'weeks');

/** Look for the best plan, for so many seconds at most. */
export const BeginPlan = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  weeks: weeks(),
  seconds: oneOf(SEARCH_SECONDS, 'seconds'),
});

/** It has looked for long enough. */
export const StopPlan = z.strictObject({ commandId: commandId(), shop: shopId(), weeks: weeks() });

/** How far it is. */
export const PlanProgressQuestion = z.strictObject({ shop: shopId(), weeks: weeks() });
