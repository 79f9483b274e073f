'use client';

import { useEffect, useState } from 'react';
import type { PerPlant } from '@/lib/engine/bench/spray-trials';
import type { PerPlantAsked } from '@/lib/views/bench-form';

const PAUSE_MS = 250;

/**
 * What one plant takes, asked of the shop whenever the typing pauses.
 *
 * Gives  null while nothing is typed, a sentence where something is missing or the shop does not answer
 */
export function usePerPlant(asked: PerPlantAsked): PerPlant | string | null {
  const [found, setFound] = useState<PerPlant | string | null>(null);
  const body = JSON.stringify(asked);
  const isEmpty = isNothing(asked);
  useEffect(() => {
    if (isEmpty) return setFound(null);
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      const answer = await ask(body, stop.signal);
      if (!stop.signal.aborted) setFound(answer);
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [body, isEmpty]);
  return found;
}

function isNothing(asked: PerPlantAsked): boolean {
  if ('leaves' in asked) return asked.leaves.areaCm2 === '' && asked.leaves.mlPer100Cm2 === '';
  return asked.trials.every(({ plants, putIn, left }) => plants === '' && putIn === '' && left === '');
}

async function ask(body: string, signal: AbortSignal): Promise<PerPlant | string> {
  try {
    const headers = { 'content-type': 'application/json' };
    const answer = await fetch('/api/v1/spray-per-plant', { method: 'POST', headers, body, signal });
    const said = await answer.json();
    return said.ok ? said.value : String(said.message);
  } catch {
    // Broken off by the next letter, or the shop is not there. What is typed stays.
    return 'The shop does not answer. What you typed is kept here.';
  }
}
