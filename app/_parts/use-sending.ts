'use client';

import { useEffect } from 'react';
import { untold } from '@/shared/mix/spraying-told';
import { keptMixes } from './kept-mixes';
import { sendMix } from './send-mix';
import { tellSpraying } from './tell-spraying';

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

/** Sends every mix that waits to be sent, and tells of every spraying that the shop does not know of. */
export function sendAll(): void {
  for (const mix of keptMixes()) {
    if (mix.state === 'to-send') void sendMix(mix.commandId);
    else if (untold(mix)) void tellSpraying(mix.commandId);
  }
}
