import type { IncomingMessage } from 'node:http';
import { isFormTooDeep } from './nesting';

/**
 * Hold a form back until it is whole, and look how deep its JSON nests: whatever parses a form afterwards works down the
 * nesting. The length of a form is judged before, so what is held is small.
 *
 * Takes    the request, before anything of its body was read
 * Gives    true when it nests too deep; else false, and the body can be read from the request as if it had just come
 */
export function isHeldFormTooDeep(request: IncomingMessage): Promise<boolean> {
  const handOn = request.push.bind(request);
  const held: Buffer[] = [];
  return new Promise((resolve) => {
    request.push = (part: Buffer | null) => {
      if (part !== null) {
        held.push(part);
        return true;
      }
      request.push = handOn;
      const isTooDeep = isFormTooDeep(Buffer.concat(held), request.headers['content-type'] ?? '');
      for (const piece of held) handOn(piece);
      handOn(null);
      resolve(isTooDeep);
      return false;
    };
  });
}
