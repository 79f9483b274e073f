import { bytesInWords, DEEPEST_BODY } from './body-limits';
import type { TurnedAway } from './judge-knock';
import { isTooDeep } from './nesting';

/** A JSON body, or why it was turned away. */
export type Body = { ok: true; value: unknown } | { ok: false; turned: TurnedAway };

/**
 * Read a JSON body, counting every byte as it comes.
 *
 * Refuses  anything but application/json (415); more bytes than the limit, said or sent (413);
 *          fewer or more bytes than Content-Length said, nesting deeper than `DEEPEST_BODY`, bad UTF-8, bad JSON (400)
 */
export async function readJsonBody(request: Request, limit: number): Promise<Body> {
  const sent = await readWhole(request, 'application/json', limit);
  return sent.ok ? parse(sent.value) : sent;
}

/**
 * Read the bytes of a file that is sent as it is, such as a PDF, counting every one as it comes.
 *
 * Refuses  any other type (415); more bytes than the limit, said or sent (413); fewer or more than Content-Length said (400)
 */
export const readFileBody = (request: Request, type: string, limit: number): Promise<Body> =>
  readWhole(request, type, limit);

type Whole = { ok: true; value: Uint8Array } | Extract<Body, { ok: false }>;

async function readWhole(request: Request, wanted: string, limit: number): Promise<Whole> {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase();
  const encoding = request.headers.get('content-encoding') ?? 'identity';
  if (type !== wanted || encoding !== 'identity')
    return turn(415, `Send ${KINDS[wanted] ?? wanted}, uncompressed, with Content-Type: ${wanted}.`);
  const said = request.headers.get('content-length');
  if (Number(said) > limit) return turn(413, tooLong(limit));
  const bytes = await readCounted(request, limit);
  if (bytes === 'too-long') return turn(413, tooLong(limit));
  if (bytes === 'broken-off' || (said !== null && Number(said) !== bytes.byteLength)) {
    return turn(400, 'The body broke off: it is not as long as its Content-Length says. Nothing was changed.');
  }
  return { ok: true, value: bytes };
}

const KINDS: Record<string, string> = { 'application/json': 'JSON', 'application/pdf': 'a PDF' };

async function readCounted(request: Request, limit: number): Promise<Uint8Array | 'too-long' | 'broken-off'> {
  const chunks: Uint8Array[] = [];
  let count = 0;
  const reader = request.body?.getReader();
  try {
    for (let part = await reader?.read(); part && !part.done; part = await reader?.read()) {
      count += part.value.byteLength;
      if (count > limit) {
        await reader?.cancel().catch(() => undefined);
        return 'too-long';
      }
      chunks.push(part.value);
    }
  } catch {
    // The other side hung up in the middle of its body.
    return 'broken-off';
  }
  return Buffer.concat(chunks);
}

function parse(bytes: Uint8Array): Body {
  if (isTooDeep(bytes)) {
    return turn(400, `Lists and objects in the body nest more than ${DEEPEST_BODY} deep. Nothing was changed.`);
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const where = error instanceof SyntaxError ? ` (${error.message})` : '';
    return turn(400, `The body is not JSON${where}. Nothing was changed.`);
  }
}

const tooLong = (limit: number) => `That is too long: at most ${bytesInWords(limit)} can be sent here.`;

function turn(status: TurnedAway['status'], message: string): Extract<Body, { ok: false }> {
  return { ok: false, turned: { status, message } };
}
