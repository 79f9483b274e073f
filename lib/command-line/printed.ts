import type { Writable } from 'node:stream';

/**
 * Write a text, piece by piece: each piece once the one before it has been handed over, however slowly the other end of the
 * pipe reads.
 *
 * Gives  without complaint when nobody reads any more: whoever pipes an answer into `head` has seen enough
 */
export function printed(stream: Writable, pieces: Iterable<string>): Promise<void> {
  const all = pieces[Symbol.iterator]();
  return new Promise((resolve, reject) => {
    const end = (error?: (Error & { code?: string }) | null): void => {
      // A stream tells of its error twice, here and as an event; unheard, the second would end the process.
      if (!error) stream.off('error', end);
      if (!error || error.code === 'EPIPE') resolve();
      else reject(error);
    };
    const next = (): void => {
      const piece = all.next();
      if (piece.done) end();
      else stream.write(piece.value, (error) => (error ? end(error) : next()));
    };
    stream.on('error', end);
    next();
  });
}
