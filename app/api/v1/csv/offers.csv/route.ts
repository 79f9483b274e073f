import { doorRoute } from '@/lib/door/door-route';
import { csvOut } from '@/lib/views/csv-lists';
import { CsvQuestion } from '@/shared/api/csv-bodies';

/** The offers of a shop as a CSV file to save. */
export const GET = doorRoute(
  { may: 'grow', query: CsvQuestion, saveAs: () => 'offers.csv', type: 'text/csv' },
  ({ query }) => csvOut('offers', query),
);
