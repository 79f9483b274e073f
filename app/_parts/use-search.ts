'use client';

import { useEffect, useState } from 'react';
import type { SearchAnswer } from '@/shared/api/search';

/** Long enough not to ask at every letter, short enough to seem at once. */
const TYPING_MS = 90;

const TROUBLE = 'The search does not answer. Press Enter to search on a page of its own.';

/** What of the shop answers a text, as it is typed. The last answer stays until the next one is there. */
export function useSearch(typed: string): { answer: SearchAnswer | null; trouble: string } {
  const [answer, setAnswer] = useState<SearchAnswer | null>(null);
  const [trouble, setTrouble] = useState('');
  const q = typed.trim();
  useEffect(() => {
    const ended = new AbortController();
    const ask = async () => {
      try {
        const response = await fetch(`/api/v1/search?${new URLSearchParams({ q })}`, { signal: ended.signal });
        if (!response.ok) throw new Error(`answered ${response.status}`);
        setAnswer(await response.json());
        setTrouble('');
      } catch {
        if (!ended.signal.aborted) setTrouble(TROUBLE);
      }
    };
    if (q === '') setAnswer({ q, groups: [] });
    const waiting = q === '' ? undefined : setTimeout(ask, TYPING_MS);
    return () => {
      clearTimeout(waiting);
      ended.abort();
    };
  }, [q]);
  return { answer, trouble };
}
