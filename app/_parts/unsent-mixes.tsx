'use client';

import { lazy, Suspense, useEffect, useState } from 'react';
import { keptKeys } from './kept-keys';

// Only a device that a mix was begun on pays for the code that sends it.
const UnsentList = lazy(async () => ({ default: (await import('./unsent-list')).UnsentList }));

/** Finished mixes that are still on this device: shown on every page, and sent as soon as there is a network. */
export function UnsentMixes() {
  const [anyKept, setAnyKept] = useState(false);
  useEffect(() => setAnyKept(keptKeys().length > 0), []);
  return anyKept ? (
    <Suspense>
      <UnsentList />
    </Suspense>
  ) : null;
}
