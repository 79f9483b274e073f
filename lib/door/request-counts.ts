import type { Durations, Figure } from '@/shared/metrics/open-metrics';

/** How many answers there were, and how long they took. Nothing says who asked, or for what exactly. */
type Counts = { answers: Map<string, number>; within: number[]; count: number; sum: number };

/** Limits of the histogram, in seconds. */
const LIMITS = [0.025, 0.1, 0.25, 0.5, 1, 2.5, 10];

/** The front of the server and the routes are bundles of their own, and share what the process counts. */
const house: { requestCounts?: Counts } & typeof globalThis = globalThis;
house.requestCounts ??= { answers: new Map(), within: LIMITS.map(() => 0), count: 0, sum: 0 };
const counts = house.requestCounts;

/** Count one answer: which place was asked, how, with which status, and after how many milliseconds. */
export function countAnswer(answered: { place: string; method: string; status: number; ms: number }): void {
  const { place, method, status, ms } = answered;
  const key = JSON.stringify({ place, method, status: `${String(status)[0]}xx` });
  counts.answers.set(key, (counts.answers.get(key) ?? 0) + 1);
  counts.count += 1;
  counts.sum += ms / 1_000;
  for (const [at, limit] of LIMITS.entries()) if (ms <= limit * 1_000) counts.within[at] = (counts.within[at] ?? 0) + 1;
}

/** What was counted since the program started. */
export function requestFigures(): { figures: Figure[]; durations: Durations[] } {
  const answers: Figure = {
    ...{ name: 'bench_and_bottle_answers', help: 'Answers by place, method and kind of status.', type: 'counter' },
    values: [...counts.answers].map(([key, value]) => ({ labels: JSON.parse(key), value })),
  };
  const upTo = LIMITS.map((seconds, at) => ({ seconds, count: counts.within[at] ?? 0 }));
  const { count, sum } = counts;
  return {
    figures: [answers],
    durations: [{ name: 'bench_and_bottle_answer_seconds', help: 'How long answers took.', upTo, count, sum }],
  };
}
