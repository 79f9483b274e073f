import { MOST_SHEET_BYTES } from '@/shared/forms/safety-sheet';

const KB = 1024;
const MB = 1024 * KB;

/** The largest form a page takes: 1 MB, the limit of Next's own actions and room for a delivery of some hundred lines. */
const FORM_BYTES = MB;

/** The largest JSON body of the HTTP API: 256 kB. A mix of ten fills with notes on each pour takes a tenth of that. */
export const JSON_BYTES = 256 * KB;

/** The largest body with a shop file in it: 25 MB, room for years of records. */
const SHOP_FILE_BYTES = 25 * MB;

/** The largest body with a CSV list in it: 10 MB, room for fifty thousand lines. */
const CSV_BYTES = 10 * MB;

/** The deepest that lists and objects may nest in a body. A mix nests six deep. A shop file travels as one text. */
export const DEEPEST_BODY = 32;

const LARGE_BODIES: Readonly<Record<string, number>> = {
  '/api/v1/shop/import': SHOP_FILE_BYTES,
  '/api/v1/shop/preview': SHOP_FILE_BYTES,
  '/api/v1/csv/import': CSV_BYTES,
  '/api/v1/csv/preview': CSV_BYTES,
  '/api/v1/sheet': MOST_SHEET_BYTES,
};

/** The most bytes that a POST to this path may carry. */
export function bodyLimit(path: string): number {
  const [place = ''] = path.split('?');
  return isApi(place) ? (LARGE_BODIES[place.replace(/\/$/, '').toLowerCase()] ?? JSON_BYTES) : FORM_BYTES;
}

/** True for an address of the HTTP API, which takes JSON; pages take forms. */
export const isApi = (path: string): boolean => /^\/api\//i.test(path);

/** A byte count as people say it. Counts here are whole kilobytes or megabytes. */
export function bytesInWords(bytes: number): string {
  return bytes % MB === 0 ? `${bytes / MB} MB` : `${bytes / KB} kB`;
}
