import type { Plan } from '../ahead/plan';

/** What a rule looks at: the plan as it stands before anything in it is flagged. */
export type Unflagged = Pick<Plan, 'shop' | 'today' | 'sprayings' | 'products'>;
