import 'server-only';
import type { z } from 'zod';
import type { CsvPreviewBody } from '@/shared/api/csv-bodies';
import { type ImportBody, type ImportPreviewBody, isNew } from '@/shared/api/import-bodies';
import type { PlanQuestion, ShopQuestion } from '@/shared/api/questions';
import type { Written } from '@/shared/json/written';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import type { Clock } from '../clock';
import { type CsvImported, type ImportCsv, importCsv } from '../commands/import-csv';
import { type Imported, importShopFile } from '../commands/import-shop-file';
import { isSmall, shopSize } from '../data/shop-size';
import type { PlanDocument } from '../engine/ahead/plan-document';
import { askedShop } from '../views/asked-shop';
import { csvPreviewOf } from '../views/csv-preview';
import { planAnswer, shopFileAnswer } from '../views/documents';
import { filePreviewOf, type ImportPreview } from '../views/import-preview';
import { readOnThread, writeOnThread } from './on-job-thread';
import { stoppable } from './stoppable';

/*
 * Where a question is answered: here, where that takes a moment, or on a thread of its own, where it would hold up everybody
 * else. Either gives the same text.
 */

/** So long a file or list is read, compared and written here: it takes a third of a second. */
const SHORT_TEXT = 50_000;

/** So many sprayings are planned here in a twentieth of a second. */
const FEW_SPRAYINGS = 400;

/** The plan of a shop, as `shop plan` prints it for the same shop as a file. */
export async function planAsked(
  asked: z.output<typeof PlanQuestion>,
  clock: Clock,
  signal: AbortSignal,
): Promise<Outcome<PlanDocument | Written>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const size = await shopSize(found.value.id);
  const isShort = isSmall(size) && size.weekly * asked.weeks <= FEW_SPRAYINGS;
  if (isShort && asked.flags === 'daily') return planAnswer({ ...asked, shop: found.value.id }, clock);
  const { today = null, weeks, flags } = asked;
  return readOnThread({ what: 'plan', shop: found.value.id, today, weeks, flags }, { signal });
}

/** A whole shop as its shop file. Refuses 'things-unread' rather than give a file that lacks something without a word. */
export async function shopFileAsked(
  asked: z.output<typeof ShopQuestion>,
  signal: AbortSignal,
): Promise<Outcome<ShopFile | Written>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const { id } = found.value;
  return isSmall(await shopSize(id))
    ? shopFileAnswer({ shop: id })
    : readOnThread({ what: 'shop file', shop: id }, { signal });
}

/** What bringing a shop file in would add and change. Refuses every fault of the file, and 'not-found'. */
export async function filePreviewAsked(
  { into, text }: z.output<typeof ImportPreviewBody>,
  signal: AbortSignal,
): Promise<Outcome<ImportPreview | Written>> {
  const found = isNew(into) ? accept(null) : await askedShop(into);
  if (!found.ok) return found;
  if (text.length <= SHORT_TEXT) return filePreviewOf(found.value, text);
  return readOnThread({ what: 'file preview', into: found.value, text }, { signal });
}

/** The import of a shop file: all of it or nothing, and only as the preview showed it. */
export async function fileImportAsked(
  { commandId, into: name, fingerprint, text }: ImportBody,
  { personId: ownerId, actor }: { personId: string | null; actor: string },
  clock: Clock,
  tell: (step: object) => void,
): Promise<Outcome<Imported | Written>> {
  const into = isNew(name) ? { isDemo: false } : { shopId: name, fingerprint: fingerprint ?? '' };
  if (text.length > SHORT_TEXT) {
    return stoppable(commandId, (signal) =>
      writeOnThread({ what: 'file import', commandId, into, text, ownerId, actor }, { told: tell, signal }),
    );
  }
  const parsed = parseShopFile(text);
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  return importShopFile({ commandId, file: parsed.file, into, ownerId, actor }, clock);
}

type Tell = (step: object) => Promise<void>;

/** What bringing a list in would add and change, with its faults. */
export async function listPreviewAsked(
  { shop, ...asked }: z.output<typeof CsvPreviewBody>,
  tell: Tell,
  signal: AbortSignal,
): Promise<Outcome<unknown>> {
  const found = await askedShop(shop);
  if (!found.ok) return found;
  if (await isBrief(found.value.id, asked.text)) return csvPreviewOf(found.value, asked, tell);
  return readOnThread({ what: 'list preview', into: found.value, asked }, { told: tell, signal });
}

/** The import of a list: all of it or nothing, and only as the preview showed it. */
export async function listImportAsked(
  given: ImportCsv,
  clock: Clock,
  tell: Tell,
): Promise<Outcome<CsvImported | Written>> {
  await tell({ step: 'together', lines: 0 });
  if (await isBrief(given.shopId, given.asked.text)) return importCsv(given, clock, tell);
  return writeOnThread({ what: 'list import', ...given }, { told: tell });
}

/** A list is looked at with the whole shop that it goes into. */
const isBrief = async (shopId: string, text: string): Promise<boolean> =>
  text.length <= SHORT_TEXT && isSmall(await shopSize(shopId));
