import type { CsvImportAnswer, CsvPreviewAnswer } from '@/shared/api/csv-bodies';
import { type Answer, postInSteps, type Sure } from '../send-in-steps';

/** How far a list is: on its way, read, checked, looked at with the whole shop, being saved. */
export type Progress =
  | { step: 'sending'; share: number }
  | { step: 'read'; lines: number }
  | { step: 'checked'; count: number; of: number }
  | { step: 'together'; lines: number }
  | { step: 'saving'; lines: number };

/** What somebody said about a list. */
export type Said = {
  columns: (string | null)[] | null;
  decimals: 'point' | 'comma' | null;
  dayOrder: 'day-first' | 'month-first' | null;
  createSuppliers: boolean;
};

export type ListName = 'products' | 'offers' | 'lots';
export type SentList = { shop: string; list: ListName; text: string } & Said;
export type Preview = CsvPreviewAnswer;
export type Imported = CsvImportAnswer;

type Told = (progress: Progress) => void;

/** Ask what a list would change. Changes nothing, and can be broken off; then there is no answer. */
export const askPreview = (sent: SentList, told: Told, signal: AbortSignal): Promise<Answer<Preview> | null> =>
  postInSteps('/api/v1/csv/preview', sent, told, NO_PREVIEW, { signal });

/** Bring a list in as the preview showed it. Sending the same command twice does it once. */
export const sendImport = (
  sent: SentList & { commandId: string; fingerprint: string },
  told: Told,
  sure: Sure | null,
): Promise<Answer<Imported> | null> => postInSteps('/api/v1/csv/import', sent, told, NO_IMPORT, { sure });

const NO_PREVIEW = 'The shop did not answer. Nothing was changed. Try again.';
const NO_IMPORT = 'The shop did not answer. Press the button again: a list that is in already does not go in twice.';
