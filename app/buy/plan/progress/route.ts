import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { planProgress } from '@/lib/views/purchase-plan';
import { PlanProgressQuestion } from '@/shared/forms/purchase-plan';

/** How far the search for a purchase plan is. */
export const GET = doorRoute({ may: 'grow', query: PlanProgressQuestion }, ({ query }) => planProgress(query, clock));
