import { doorRoute } from '@/lib/door/door-route';
import { searchAnswer } from '@/lib/views/search';
import { SearchQuestion } from '@/shared/api/search';

export const GET = doorRoute({ may: 'see-shop', query: SearchQuestion }, ({ query }) => searchAnswer(query));
