'use client';

import { useEffect } from 'react';
import { keptMixes } from './kept-mixes';
import { sendMix } from './send-mix';

const AGAIN_AFTER = 30_000;

/** Sends every mix that waits to be sent: now, when the network comes back, and every half minute. */
export function useSending(): void {
  useEffect(() => {
    sendAll();
    const timer = setInterval(sendAll, AGAIN_AFTER);
    window.addEventListener('online', sendAll);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', sendAll);
    };
  }, []);
}

/** Sends every mix that waits to be sent. */
export function sendAll(): void {
  for (const { commandId, state } of keptMixes()) if (state === 'to-send') void sendMix(commandId);
}
