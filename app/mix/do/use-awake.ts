'use client';

import { useEffect } from 'react';

/** Keeps the screen on while a mix is on it, where the browser can: wet gloves unlock no phone. */
export function useAwake(): void {
  useEffect(() => {
    let isOver = false;
    let lock: WakeLockSentinel | null = null;
    const stayAwake = async () => {
      if (document.visibilityState !== 'visible' || !navigator.wakeLock) return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (isOver) await lock.release();
      } catch {
        // The battery is low, or nobody may: the screen goes dark as it does elsewhere.
      }
    };
    void stayAwake();
    // A screen that went dark has let go of it.
    document.addEventListener('visibilitychange', stayAwake);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', stayAwake);
      void lock?.release();
    };
  }, []);
}
