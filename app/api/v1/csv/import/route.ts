import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { listImportAsked } from '@/lib/threads/answers';
import { CsvImportBody } from '@/shared/api/csv-bodies';
import { NoQuestion } from '@/shared/api/questions';

/** The import of a list: all of it or nothing, and only as the preview showed it. */
export const POST = doorRoute(
  { may: 'grow', query: NoQuestion, body: CsvImportBody, tells: true },
  ({ body: { commandId, shop: shopId, fingerprint, ...asked }, visitor: { actor }, tell }) =>
    listImportAsked({ commandId, shopId, actor, asked, fingerprint }, clock, tell),
);
