'use client';

import type { ReactNode } from 'react';
import { useFreshBoard } from '../_parts/use-fresh-board';

/** Shows who may stand where only as long as the shop confirms it: a page that hears nothing of it keeps people out. */
export function StillConfirmed({ children }: { children: ReactNode }) {
  const { isConfirmed, isAlive } = useFreshBoard(null, '/keep-out/now');
  if (isConfirmed || !isAlive) return children;
  return (
    <p role="status" className="grave">
      <b>? KEEP OUT of every bench (not confirmed).</b> The shop does not answer. It is told again once it does.
    </p>
  );
}
