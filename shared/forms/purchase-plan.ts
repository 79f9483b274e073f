import { z } from 'zod';
import { commandId, shopId } from './command-fields';

const weeks = () =>
  z
    .string()
    .regex(/^(26|52|104)$/, { error: 'Choose 26, 52 or 104 weeks.' })
    .transform(Number);

/** The seconds that a search may take. */
export const SEARCH_SECONDS = [5, 10, 30, 60] as const;

/** Look for the best plan, for so many seconds at most. */
export const BeginPlan = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  weeks: weeks(),
  seconds: z
    .string()
    .regex(/^(5|10|30|60)$/, { error: 'Choose 5, 10, 30 or 60 seconds.' })
    .transform(Number),
});

/** It has looked for long enough. */
export const StopPlan = z.strictObject({ commandId: commandId(), shop: shopId(), weeks: weeks() });

/** How far it is. */
export const PlanProgressQuestion = z.strictObject({ shop: shopId(), weeks: weeks() });
