import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { buyAnswer } from '@/lib/views/buying-documents';
import { BuyQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'grow', query: BuyQuestion }, ({ query }) => buyAnswer(query, clock));
