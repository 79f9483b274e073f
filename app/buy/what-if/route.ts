import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { whatIfAsked } from '@/lib/threads/read-answers';
import { WhatIfQuestion } from '@/shared/forms/what-if';

/** What supposing something beside the plan would do, before anybody does it. */
export const GET = doorRoute({ may: 'grow', query: WhatIfQuestion }, ({ query, signal }) =>
  whatIfAsked(query, clock, signal),
);
