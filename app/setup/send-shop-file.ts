import type { Comparison } from '@/lib/engine/exchange/compare';
import { sureHeaders } from '@/shared/forms/earlier-asked';
import type { Fault } from '@/shared/outcome';

/**
 * What the shop says no to: one sentence, and what in the file must be put right. With `confirm` the faults are benches that
 * would open earlier, or lots of a great many bottles, and the same may be sent again with it and a reason.
 */
export type Refused = { message: string; faults: Fault[]; confirm?: string; code?: string };

/** Why it is certain that a bench may open earlier, for the refusal that asked for it. */
export type Sure = { token: string; reason: string };

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
  sure: Sure | null,
): Promise<Answer<Imported>> => post('/api/v1/shop/import', { commandId, into, fingerprint, text }, sure);

/** What a refusal of the HTTP API says. */
export const refusedIn = ({ message, faults = [], confirm, code }: Partial<Refused>): Refused => ({
  ...{ message: message ?? '', faults, confirm, code },
});

async function post<T>(path: string, body: unknown, sure: Sure | null = null): Promise<Answer<T>> {
  try {
    const answer = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...sureHeaders(sure) },
      body: JSON.stringify(body),
    });
    const said = await answer.json();
    if (answer.ok) return { ok: true, value: said };
    return { ok: false, refused: refusedIn(said) };
  } catch {
    // No answer, or one that is no JSON: the server is not there. Nothing typed is lost.
    return { ok: false, refused: { message: 'The shop did not answer. Nothing was changed. Try again.', faults: [] } };
  }
}
