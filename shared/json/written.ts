/**
 * A document that was written as JSON elsewhere: its text in pieces, as bytes, and what of it an answer needs beside that.
 */
export class Written {
  constructor(
    readonly pieces: ReadableStream<Uint8Array>,
    readonly name: string | null = null,
  ) {}
}
