import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { equivalentsAnswer } from '@/lib/views/buying-documents';
import { EquivalentsQuestion } from '@/shared/api/questions';

export const GET = doorRoute({ may: 'grow', query: EquivalentsQuestion }, ({ query }) =>
  equivalentsAnswer(query, clock),
);
