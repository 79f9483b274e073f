'use client';

import { useEffect, useState } from 'react';

const PAUSE_MS = 200;

/** A question to the shop: an address, and for a long one what is sent there. */
export type Question = { address: string; body?: unknown };

/**
 * What the shop says to a question that changes while somebody types, asked whenever it stands still for a moment. It
 * changes nothing there, so an answer that is no longer wanted is simply dropped.
 *
 * Takes  the question; null when there is none; how long it has to stand still, in milliseconds
 * Gives  the answer to exactly this question; or that it is on its way, or that the shop is away
 */
export function useAsked<T>(question: Question | null, pause = PAUSE_MS): T | 'asking' | 'away' | null {
  const [answer, setAnswer] = useState<{ asked: string; said: T | null } | null>(null);
  const asked = question && JSON.stringify(question);
  useEffect(() => {
    if (asked === null) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      const said = await ask<T>(JSON.parse(asked), stop.signal);
      if (!stop.signal.aborted) setAnswer({ asked, said });
    }, pause);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [asked, pause]);
  if (asked === null) return null;
  if (answer?.asked !== asked) return 'asking';
  return answer.said ?? 'away';
}

async function ask<T>({ address, body }: Question, signal: AbortSignal): Promise<T | null> {
  try {
    const sent = { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
    const answer = await fetch(address, { ...(body !== undefined && sent), signal });
    return answer.ok ? await answer.json() : null;
  } catch {
    // Broken off by the next letter, or the shop is away. What is typed stays.
    return null;
  }
}
