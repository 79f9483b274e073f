import { useEffect, useRef, useState } from 'react';
import type { WhatIfSaid } from '@/lib/views/what-if';
import { type WhatIfFields, whatIfIn, whatIfText } from '@/shared/forms/what-if';

/** What the shop last said, to which question, and whether it did not answer the last one. */
type Heard = { to: string | null; said: WhatIfSaid | null; isAway: boolean };

/** Nobody waits longer than this for an answer. */
const PATIENCE_MS = 8_000;

/**
 * What the shop says while somebody moves a slider. One question is under way at a time, and after each answer comes the
 * newest one: so something is shown also while the slider does not stand still, and no answer waits behind questions that
 * nobody wants answered any more.
 *
 * Takes  the shop, what is supposed of it (null: nothing), and what was said to that together with the page
 */
export function useWhatIf(shop: string, fields: WhatIfFields | null, before: WhatIfSaid | null) {
  const wanted = fields && addressOf(shop, fields);
  const [heard, setHeard] = useState<Heard>({ to: before && wanted, said: before, isAway: false });
  const isAsking = useRef(false);
  useEffect(() => {
    if (wanted === null || wanted === heard.to || isAsking.current) return;
    isAsking.current = true;
    askAt(wanted).then((said) => {
      isAsking.current = false;
      setHeard((last) => ({ to: wanted, said: said ?? last.said, isAway: said === null }));
    });
  }, [wanted, heard]);
  useEffect(() => {
    // Asked about nothing, the shop makes itself ready for what follows, so that the first answer is as quick as any.
    askAt(addressOf(shop, whatIfIn({})));
  }, [shop]);
  return wanted === null ? { said: null, isAway: false } : heard;
}

const addressOf = (shop: string, fields: WhatIfFields): string =>
  `/buy/what-if?${new URLSearchParams([...new URLSearchParams(whatIfText(fields)), ['shop', shop]])}`;

async function askAt(address: string): Promise<WhatIfSaid | null> {
  try {
    const answer = await fetch(address, { signal: AbortSignal.timeout(PATIENCE_MS) });
    return answer.ok ? await answer.json() : null;
  } catch {
    // The shop is away. What is typed stays.
    return null;
  }
}
