/** Says how far some work is, and lets what waits for its turn go on. */
export type Tell = (step: object) => Promise<void>;

/** One JSON document a line. */
const STEPS = 'application/x-ndjson';

/** Whether whoever asks wants to hear how far it is. */
export const wantsSteps = (header: (name: string) => string | null): boolean =>
  (header('accept') ?? '').toLowerCase().includes(STEPS);

/** For whoever only wants the answer: nothing is said, and others get their turn all the same. */
export const untold: Tell = () => nextTurn();

/**
 * An answer that comes line by line: a line for each step, and last `{ "status", "answer" }` with what the route would
 * have answered otherwise.
 *
 * Takes    the headers, and the work, which gives that answer
 */
export function toldInSteps(headers: Record<string, string>, work: (tell: Tell) => Promise<Response>): Response {
  const lines = new TextEncoder();
  let isHeard = true;
  const body = new ReadableStream<Uint8Array>({
    async start(controller) {
      const line = (text: string) => {
        if (isHeard) controller.enqueue(lines.encode(`${text}\n`));
      };
      const answer = await work(async (step) => {
        line(JSON.stringify(step));
        await nextTurn();
      });
      line(`{"status":${answer.status},"answer":${await answer.text()}}`);
      if (isHeard) controller.close();
    },
    cancel() {
      isHeard = false;
    },
  });
  // Whatever stands between must neither keep lines back nor squeeze them.
  const unkept = { 'Cache-Control': 'no-store, no-transform', 'X-Accel-Buffering': 'no' };
  return new Response(body, { headers: { ...headers, ...unkept, 'Content-Type': `${STEPS}; charset=utf-8` } });
}

const nextTurn = (): Promise<void> => new Promise((resume) => setImmediate(resume));
