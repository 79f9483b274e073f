import { doorRoute } from '@/lib/door/door-route';
import { readiness } from '@/lib/views/health';
import { NoQuestion } from '@/shared/api/questions';

/** Whether the shop can answer and take what is sent. */
export const GET = doorRoute({ may: 'open', query: NoQuestion }, readiness);
