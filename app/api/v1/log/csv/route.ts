import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { recordsAsked } from '@/lib/threads/read-answers';
import { LogQuestion } from '@/shared/api/questions';

/** The log as a list to save: a line for each product of each version. */
export const GET = doorRoute(
  { may: 'see-records', query: LogQuestion, saveAs: () => 'records.csv', type: 'text/csv' },
  ({ query, signal }) => recordsAsked(query, 'csv', clock, signal),
);
