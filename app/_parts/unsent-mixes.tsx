'use client';

import { type ComponentType, useEffect, useState } from 'react';
import { keptKeys } from './kept-keys';

/**
 * Finished mixes that are still on this device: shown on every page, and sent as soon as there is a network. Only a device
 * that a mix was begun on pays for the code that sends it; where that cannot be had now, it is asked for again once there
 * is a network.
 */
export function UnsentMixes() {
  const [List, setList] = useState<ComponentType | null>(null);
  useEffect(() => {
    if (keptKeys().length === 0) return;
    let isOver = false;
    const load = () =>
      import('./unsent-list').then(
        ({ UnsentList }) => {
          if (!isOver) setList(() => UnsentList);
        },
        () => {},
      );
    void load();
    window.addEventListener('online', load);
    return () => {
      isOver = true;
      window.removeEventListener('online', load);
    };
  }, []);
  return List && <List />;
}
