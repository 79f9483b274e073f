import { doorRoute } from '@/lib/door/door-route';
import { NoQuestion } from '@/shared/api/questions';
import { accept } from '@/shared/outcome';

/** Whether the process answers at all. */
export const GET = doorRoute({ may: 'open', query: NoQuestion }, async () => accept({ status: 'alive' }));
