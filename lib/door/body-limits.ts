/** The largest form a page takes: 1 MB, the limit of Next's own actions. */
export const FORM_BYTES = 1024 * 1024;

/** The largest body the HTTP API takes unless a route says less: 25 MB, room for a shop file with years of records. */
export const API_BYTES = 25 * 1024 * 1024;

/** The largest body with a CSV list in it: 10 MB, room for fifty thousand lines. */
export const CSV_BYTES = 10 * 1024 * 1024;

/** A byte count as people say it. Counts here are whole kilobytes or megabytes. */
export function bytesInWords(bytes: number): string {
  return bytes % (1024 * 1024) === 0 ? `${bytes / (1024 * 1024)} MB` : `${bytes / 1024} kB`;
}
