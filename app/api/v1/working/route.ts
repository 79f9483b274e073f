import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { workingAnswer } from '@/lib/views/documents';
import { WorkingQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'see-shop', query: WorkingQuestion }, ({ query }) => workingAnswer(query, clock));
