import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { mixAnswer } from '@/lib/views/documents';
import { MixQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'see-shop', query: MixQuestion }, ({ query }) => mixAnswer(query, clock));
