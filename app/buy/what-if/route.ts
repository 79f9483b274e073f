import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { whatIfAnswer } from '@/lib/views/what-if';
import { WhatIfQuestion } from '@/shared/forms/what-if';

/** What supposing something beside the plan would do, before anybody does it. */
export const GET = doorRoute({ query: WhatIfQuestion }, ({ query }) => whatIfAnswer(query, clock));
