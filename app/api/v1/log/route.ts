import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { recordsAsked } from '@/lib/threads/read-answers';
import { LogQuestion } from '@/shared/api/questions';

/** The log as a file to save: records with every version, and the chain that seals them. */
export const GET = doorRoute(
  { may: 'see-records', query: LogQuestion, saveAs: () => 'records.json' },
  ({ query, signal }) => recordsAsked(query, 'json', clock, signal),
);
