import { doorRoute } from '@/lib/door/door-route';
import { filePreviewAsked } from '@/lib/threads/answers';
import { ImportPreviewBody } from '@/shared/api/import-bodies';
import { NoQuestion } from '@/shared/api/questions';

export const POST = doorRoute(
  { may: 'own', query: NoQuestion, body: ImportPreviewBody, looks: true },
  ({ body, signal }) => filePreviewAsked(body, signal),
);
