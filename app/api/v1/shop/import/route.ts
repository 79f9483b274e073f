import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { fileImportAsked } from '@/lib/threads/answers';
import { ImportBody } from '@/shared/api/import-bodies';
import { NoQuestion } from '@/shared/api/questions';

/** The import: all of a file or nothing, and only as the preview showed it. */
export const POST = doorRoute(
  { may: 'own', query: NoQuestion, body: ImportBody, tells: true },
  ({ body, visitor, tell }) => fileImportAsked(body, visitor, clock, tell),
);
