'use client';

import { useEffect, useState } from 'react';

/** So long nothing answers on a screen that has just come, in milliseconds: a second tap was meant for the one before it. */
const SETTLING_MS = 500;

/** Whether what is shown has only just come. Takes the name of what is shown. */
export function useSettling(shown: string): boolean {
  const [seen, setSeen] = useState<string | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setSeen(shown), SETTLING_MS);
    return () => clearTimeout(timer);
  }, [shown]);
  return seen !== shown;
}
