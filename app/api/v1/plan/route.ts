import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { planAnswer } from '@/lib/views/documents';
import { PlanQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ query: PlanQuestion }, ({ query }) => planAnswer(query, clock));
