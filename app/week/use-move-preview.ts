'use client';

import { useEffect, useState } from 'react';
import type { MovePreview } from '@/lib/views/move-preview';
import type { SprayingMove } from '@/lib/views/spraying-move';

const PAUSE_MS = 200;

/**
 * What moving a spraying to a place would do, asked of the shop whenever the place stands still for a moment.
 *
 * Takes  the place; null when it is where it is already
 */
export function useMovePreview(
  { shop, program, on }: SprayingMove,
  place: { day: string; at: string } | null,
): MovePreview | 'asking' | 'away' | null {
  const [answer, setAnswer] = useState<{ asked: string; preview: MovePreview | null } | null>(null);
  const asked = place && new URLSearchParams({ shop, program, on, to: place.day, at: place.at }).toString();
  useEffect(() => {
    if (asked === null) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      const preview = await askPreview(asked, stop.signal);
      if (!stop.signal.aborted) setAnswer({ asked, preview });
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [asked]);
  if (asked === null) return null;
  if (answer?.asked !== asked) return 'asking';
  return answer.preview ?? 'away';
}

async function askPreview(asked: string, signal: AbortSignal): Promise<MovePreview | null> {
  try {
    const answer = await fetch(`/week/move?${asked}`, { signal });
    return answer.ok ? await answer.json() : null;
  } catch {
    // Broken off by the next step, or the shop is away. The form can be sent all the same.
    return null;
  }
}
