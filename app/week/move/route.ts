import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { movePreview } from '@/lib/views/move-preview';
import { MoveQuestion } from '@/shared/forms/move-spraying';

/** What moving a spraying would do, before anybody does it. */
export const GET = doorRoute({ may: 'spray', query: MoveQuestion }, ({ query }) => movePreview(query, clock));
