import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { planAsked } from '@/lib/threads/answers';
import { PlanQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'see-shop', query: PlanQuestion }, ({ query, signal }) =>
  planAsked(query, clock, signal),
);
