import type { Comparison } from '@/lib/engine/exchange/compare';
import type { Fault } from '@/shared/outcome';

/** What the shop says no to: one sentence, and what in the file must be put right. */
export type Refused = { message: string; faults: Fault[] };

export type Preview = { name: string; comparison: Comparison; fingerprint: string | null };
export type Imported = { shopId: string; added: number; changed: number };

export type Answer<T> = { ok: true; value: T } | { ok: false; refused: Refused };

/** Ask what a file would change. Changes nothing. */
export const askPreview = (into: string, text: string): Promise<Answer<Preview>> =>
  post('/api/v1/shop/preview', { into, text });

/** Bring a file in as the preview showed it, all of it or nothing. Sending the same command twice does it once. */
export const sendImport = (
  commandId: string,
  into: string,
  fingerprint: string | null,
  text: string,
): Promise<Answer<Imported>> => post('/api/v1/shop/import', { commandId, into, fingerprint, text });

async function post<T>(path: string, body: unknown): Promise<Answer<T>> {
  try {
    const answer = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    const said = await answer.json();
    if (answer.ok) return { ok: true, value: said };
    return { ok: false, refused: { message: said.message, faults: said.faults ?? [] } };
  } catch {
    // No answer, or one that is no JSON: the server is not there. Nothing typed is lost.
    return { ok: false, refused: { message: 'The shop did not answer. Nothing was changed. Try again.', faults: [] } };
  }
}
