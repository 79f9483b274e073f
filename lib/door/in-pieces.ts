import { jsonPieces } from '@/shared/json/pieces';

/** A document as JSON. A large one comes in pieces: it never stands in memory as one text, and others are answered in between. */
export function inPieces(content: unknown): string | ReadableStream<Uint8Array> {
  const pieces = jsonPieces(content);
  const first = pieces.next();
  const second = pieces.next();
  if (second.done) return first.value ?? '';
  const encoder = new TextEncoder();
  const begun = [first.value ?? '', second.value];
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      await new Promise((resume) => setImmediate(resume));
      const piece = begun.shift() ?? pieces.next().value;
      if (piece === undefined) controller.close();
      else controller.enqueue(encoder.encode(piece));
    },
  });
}
