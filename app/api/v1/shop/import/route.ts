import { clock } from '@/lib/clock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { doorRoute } from '@/lib/door/door-route';
import { ImportBody, isNew } from '@/shared/api/import-bodies';
import { NoQuestion } from '@/shared/api/questions';
import { refuse } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';

/** The import: all of a file or nothing, and only as the preview showed it. */
export const POST = doorRoute({ query: NoQuestion, body: ImportBody }, async ({ body }) => {
  const parsed = parseShopFile(body.text);
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const into = isNew(body.into) ? { isDemo: false } : { shopId: body.into, fingerprint: body.fingerprint ?? '' };
  return importShopFile({ commandId: body.commandId, file: parsed.file, into }, clock);
});
