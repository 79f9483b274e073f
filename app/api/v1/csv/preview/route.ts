import { doorRoute } from '@/lib/door/door-route';
import { listPreviewAsked } from '@/lib/threads/answers';
import { CsvPreviewBody } from '@/shared/api/csv-bodies';
import { NoQuestion } from '@/shared/api/questions';

export const POST = doorRoute(
  { may: 'grow', query: NoQuestion, body: CsvPreviewBody, looks: true, tells: true },
  ({ body, tell, signal }) => listPreviewAsked(body, tell, signal),
);
