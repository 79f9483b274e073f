import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { keepoutAnswer } from '@/lib/views/documents';
import { KeepoutQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'see-board', query: KeepoutQuestion }, ({ query }) => keepoutAnswer(query, clock));
