import { DEEPEST_BODY } from './body-limits';

const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT, QUOTE, BACKSLASH] = [...'[]{}"\\'].map((sign) =>
  sign.charCodeAt(0),
);

/**
 * Watches JSON as it arrives and tells when it nests too deep, before a parser sees the whole of it.
 *
 * Gives    a function that takes the next bytes; true once lists and objects nest deeper than `DEEPEST_BODY`
 */
function nestingWatch(): (bytes: Uint8Array) => boolean {
  let depth = 0;
  let inText = false;
  let isEscaped = false;
  return (bytes) => {
    for (const byte of bytes) {
      if (isEscaped) isEscaped = false;
      else if (inText && byte === BACKSLASH) isEscaped = true;
      else if (byte === QUOTE) inText = !inText;
      else if (inText) continue;
      else if (byte === OPEN_LIST || byte === OPEN_OBJECT) depth += 1;
      else if (byte === CLOSE_LIST || byte === CLOSE_OBJECT) depth -= 1;
      if (depth > DEEPEST_BODY) return true;
    }
    return false;
  };
}

/** True when JSON in these bytes nests deeper than `DEEPEST_BODY`. */
export const isTooDeep = (bytes: Uint8Array): boolean => nestingWatch()(bytes);

/**
 * True when a part of a multipart form, or an action's text, is JSON that nests deeper than `DEEPEST_BODY`. Only parts that
 * begin as JSON count: what a person types into a field may hold any brackets.
 */
export function isFormTooDeep(body: Buffer, contentType: string): boolean {
  const boundary = /boundary="?([^";]+)/.exec(contentType)?.[1];
  if (boundary === undefined) return isTooDeep(body);
  let from = body.indexOf(`--${boundary}`);
  while (from !== -1) {
    const next = body.indexOf(`--${boundary}`, from + 1);
    const value = body.indexOf('\r\n\r\n', from) + 4;
    const part = body.subarray(value, next === -1 ? body.length : next);
    if (value > 3 && (part[0] === OPEN_LIST || part[0] === OPEN_OBJECT) && isTooDeep(part)) return true;
    from = next;
  }
  return false;
}
