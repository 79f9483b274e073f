import { z } from 'zod';
import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { purchaseListCsv } from '@/lib/views/purchase-list';

/** The purchase list as a CSV file to save: of one order, of lines in the address, or of all that is on order. */
export const GET = doorRoute(
  {
    may: 'grow',
    query: z.record(z.string().max(100), z.string().max(500)),
    saveAs: () => 'purchase-list.csv',
    type: 'text/csv',
  },
  ({ query }) => purchaseListCsv(clock, query),
);
