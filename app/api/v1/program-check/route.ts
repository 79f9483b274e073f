import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { programCheck } from '@/lib/views/program-check';
import { ProgramCheckBody } from '@/shared/api/program-check-body';
import { NoQuestion } from '@/shared/api/questions';

/** When benches would be closed by a program while it is typed. It changes nothing; a POST because a program is long. */
export const POST = doorRoute(
  { may: 'grow', query: NoQuestion, body: ProgramCheckBody, looks: true },
  ({ body: { shop, program, ...draft } }) => programCheck(shop, program, draft, clock),
);
