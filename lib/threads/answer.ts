import { Written } from '@/shared/json/written';

/** So many pieces of an answer are on their way before the thread waits. */
export const PIECES_ON_THE_WAY = 8;

/** Whoever leaves a piece unread for so long has gone. */
const MOST_MS_UNREAD = 30_000;

/** An answer as its pieces come in from a thread. The thread may send a further one as each is read. */
export class Answer {
  /** The name of the shop, where the thread says it. */
  name: string | null = null;
  private readonly pieces: Uint8Array[] = [];
  private end: 'open' | 'whole' | Error = 'open';
  private wake: (() => void) | null = null;
  private unread: NodeJS.Timeout | null = null;

  /** Takes the room for pieces that are on their way, and what to do when nobody reads any more. */
  constructor(
    private readonly room: Int32Array,
    private readonly leave: () => void,
  ) {}

  /** The answer as it is handed on. Asked for once. */
  written(): Written {
    const stream = new ReadableStream<Uint8Array>(
      { pull: (controller) => this.pull(controller), cancel: () => this.leave() },
      { highWaterMark: 0 },
    );
    return new Written(stream, this.name);
  }

  add(piece: Uint8Array): void {
    this.pieces.push(piece);
    if (this.wake) this.wake();
    else this.unread ??= setTimeout(this.leave, MOST_MS_UNREAD).unref();
  }

  /** No more pieces come: the answer is whole, or something went wrong. */
  close(end: 'whole' | Error): void {
    if (this.end === 'open') this.end = end;
    this.wake?.();
  }

  private async pull(controller: ReadableStreamDefaultController<Uint8Array>): Promise<void> {
    if (this.unread) clearTimeout(this.unread);
    this.unread = null;
    while (this.pieces.length === 0 && this.end === 'open') {
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
      this.wake = null;
    }
    const piece = this.pieces.shift();
    if (piece) controller.enqueue(piece);
    else if (this.end === 'whole') controller.close();
    else controller.error(this.end);
    Atomics.add(this.room, 0, piece ? 1 : 0);
    Atomics.notify(this.room, 0);
  }
}
