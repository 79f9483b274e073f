import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { NoQuestion } from '@/shared/api/questions';
import { accept } from '@/shared/outcome';

/** What the shop's clock shows, for a device on which a mix is followed: what it notes counts by that. */
export const GET = doorRoute({ may: 'be-here', query: NoQuestion }, async () => accept({ now: clock.now() }));
