import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { seasonCurve } from '@/lib/views/season-curve';
import { SeasonCurveQuestion } from '@/shared/forms/season-curve';

/** What a season costs with each candidate, by how much is sprayed in it. */
export const GET = doorRoute({ may: 'grow', query: SeasonCurveQuestion }, ({ query }) => seasonCurve(query, clock));
