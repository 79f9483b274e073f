import { doorRoute } from '@/lib/door/door-route';
import { stopWork } from '@/lib/threads/stoppable';
import { StopBody } from '@/shared/api/import-bodies';
import { NoQuestion } from '@/shared/api/questions';
import { accept } from '@/shared/outcome';

/** Stops an import that is not being saved yet. The import itself answers what became of it. */
export const POST = doorRoute({ may: 'own', query: NoQuestion, body: StopBody }, async ({ body: { commandId } }) =>
  accept({ found: stopWork(commandId) }),
);
