'use client';

import { useEffect, useState } from 'react';
import type { RecipeCheck } from '@/lib/engine/mix/recipe-check';
import type { RecipeDraft, RecipeLine } from '@/shared/forms/recipe';

/** What was asked, and what the shop said to it. */
type Checked = { draft: RecipeDraft; check: RecipeCheck };

export type LiveCheck = Checked & {
  /** Whether what is typed now is still on its way to the shop, or the shop does not answer. */
  isBehind: boolean;
  isAway: boolean;
};

const PAUSE_MS = 250;

/**
 * What a recipe comes to while it is typed, asked of the shop whenever the typing pauses.
 *
 * Takes  the shop, what is typed, and what the page was made with
 */
export function useRecipeCheck(shop: string, draft: RecipeDraft, first: Checked): LiveCheck {
  const [checked, setChecked] = useState(first);
  const [isAway, setAway] = useState(false);
  const asked = JSON.stringify({ ...draft, name: '' });
  const isBehind = asked !== JSON.stringify({ ...checked.draft, name: '' });
  useEffect(() => {
    if (!isBehind) return;
    const stop = new AbortController();
    const typed: RecipeDraft = JSON.parse(asked);
    const timer = setTimeout(async () => {
      const check = await askCheck(shop, typed, stop.signal);
      if (stop.signal.aborted) return;
      setAway(check === null);
      if (check) setChecked({ draft: typed, check });
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [asked, isBehind, shop]);
  return { ...checked, isBehind, isAway };
}

/** What the shop says to a recipe; null when it does not answer. */
async function askCheck(shop: string, draft: RecipeDraft, signal: AbortSignal): Promise<RecipeCheck | null> {
  try {
    const answer = await fetch('/api/v1/recipe-check', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ shop, ...draft }),
      signal,
    });
    return answer.ok ? await answer.json() : null;
  } catch {
    // Broken off by the next letter, or the shop is not there. What is typed stays.
    return null;
  }
}

/** What the shop said to a line as it is typed now; undefined while it has not said it yet. */
export function checkedLineOf(
  { draft, check }: Checked,
  line: RecipeLine,
  number: number,
): RecipeCheck['lines'][number] | undefined {
  const asked = draft.lines[number];
  const isSame = asked && asked.product === line.product && asked.dose === line.dose && asked.use === line.use;
  return isSame ? check.lines[number] : undefined;
}
