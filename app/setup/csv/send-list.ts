import type { CsvImportAnswer, CsvPreviewAnswer } from '@/shared/api/csv-bodies';
import { sureHeaders } from '@/shared/forms/earlier-asked';
import { type Answer, refusedIn, type Sure } from '../send-shop-file';

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
  post('/api/v1/csv/preview', sent, told, NO_PREVIEW, { signal });

/** Bring a list in as the preview showed it. Sending the same command twice does it once. */
export const sendImport = (
  sent: SentList & { commandId: string; fingerprint: string },
  told: Told,
  sure: Sure | null,
): Promise<Answer<Imported> | null> => post('/api/v1/csv/import', sent, told, NO_IMPORT, { sure });

/** (fetch does not say how much of a body is on its way.) */
function post<T>(
  path: string,
  body: object,
  told: Told,
  unanswered: string,
  { signal, sure = null }: { signal?: AbortSignal; sure?: Sure | null },
): Promise<Answer<T> | null> {
  const none: Answer<T> = { ok: false, refused: { message: unanswered, faults: [] } };
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    let read = 0;
    const lines = () => {
      const end = request.responseText.lastIndexOf('\n');
      if (end < read) return;
      for (const line of request.responseText.slice(read, end).split('\n')) if (isStep(line)) told(JSON.parse(line));
      read = end + 1;
    };
    request.open('POST', path);
    request.setRequestHeader('content-type', 'application/json');
    request.setRequestHeader('accept', 'application/x-ndjson');
    for (const [name, value] of Object.entries(sureHeaders(sure))) request.setRequestHeader(name, value);
    request.upload.onprogress = ({ loaded, total }) => told({ step: 'sending', share: total > 0 ? loaded / total : 1 });
    request.onprogress = () => request.status === 200 && lines();
    request.onload = () => resolve(answerIn<T>(request.status, request.responseText) ?? none);
    request.onerror = () => resolve(none);
    request.onabort = () => resolve(null);
    signal?.addEventListener('abort', () => request.abort());
    request.send(JSON.stringify(body));
  });
}

const NO_PREVIEW = 'The shop did not answer. Nothing was changed. Try again.';
const NO_IMPORT = 'The shop did not answer. Press the button again: a list that is in already does not go in twice.';

const isStep = (line: string): boolean => line.startsWith('{"step"');

function answerIn<T>(sentStatus: number, text: string): Answer<T> | null {
  try {
    const last = text.trimEnd().split('\n').at(-1) ?? '';
    const said = JSON.parse(last);
    const { status, answer } = sentStatus === 200 && 'status' in said ? said : { status: sentStatus, answer: said };
    if (status === 200) return { ok: true, value: answer };
    return { ok: false, refused: refusedIn(answer) };
  } catch {
    // The answer broke off, or is none of ours.
    return null;
  }
}
