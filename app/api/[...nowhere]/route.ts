import { z } from 'zod';
import { doorRoute } from '@/lib/door/door-route';
import { refuse } from '@/shared/outcome';

/** Every address under /api that no route answers: a sentence that says where to look, instead of a page. */
const nowhere = doorRoute({ query: z.looseObject({}) }, async () => refuse({ code: 'no-such-route' }));

export const GET = nowhere;
export const POST = nowhere;
