import { z } from 'zod';
import { doorRoute } from '@/lib/door/door-route';
import { refuse } from '@/shared/outcome';

const anything = { may: 'open', query: z.looseObject({}) } as const;

/** Every address under /api that no route answers: a sentence that says where to look, instead of a page. */
const nowhere = async () => refuse({ code: 'no-such-route' });

export const GET = doorRoute(anything, nowhere);
export const POST = doorRoute(anything, nowhere);
