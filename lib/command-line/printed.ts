import type { Writable } from 'node:stream';

/**
 * Done once everything has been handed over, however slowly the other end of the pipe reads.
 *
 * Gives  without complaint when nobody reads any more: whoever pipes an answer into `head` has seen enough
 */
export function printed(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const done = (error?: (Error & { code?: string }) | null): void => {
      // A stream tells of its error twice, here and as an event; unheard, the second would end the process.
      if (!error) stream.off('error', done);
      if (!error || error.code === 'EPIPE') resolve();
      else reject(error);
    };
    stream.on('error', done);
    stream.write(text, done);
  });
}
