import type { Instant } from '@/shared/time/instant';
import type { Plan } from '../ahead/plan';
import type { BenchState } from '../keepout/keep-out';
import { byGravity } from '../rules/flag';
import type { Alert } from './alert';
import { closedAtOpeningAlerts, reopeningAlerts } from './bench-alerts';
import { bottleAlerts } from './bottle-alerts';
import { limitAlerts } from './limit-alerts';
import { reorderAlerts } from './reorder-alerts';

/**
 * Everything that somebody should be told at a moment, the gravest first. Whether it was told already is not known here.
 *
 * Takes   the plan of the day, who may stand at which bench now, and the moment
 */
export function alertsOf(plan: Plan, benches: readonly BenchState[], now: Instant): Alert[] {
  return [
    ...closedAtOpeningAlerts(plan, benches, now),
    ...reopeningAlerts(plan, benches, now),
    ...limitAlerts(plan),
    ...reorderAlerts(plan),
    ...bottleAlerts(plan),
  ].sort(byGravity);
}
