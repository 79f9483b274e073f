'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import styles from './hold-button.module.css';

/** So long a button is held that must not be pressed by mistake, in milliseconds. */
const HOLD_MS = 700;
/** So long a second press counts where nothing can be held. */
const AGAIN_MS = 4_000;

type HoldButtonProps = { children: ReactNode; className?: string | undefined; isMain?: boolean; press: () => void };

/**
 * A button that is held until it is full. By keys, or by a program that reads the screen aloud, it is pressed twice
 * instead: the first press says so.
 */
export function HoldButton({ children, className, isMain = false, press }: HoldButtonProps) {
  const [state, setState] = useState<'idle' | 'held' | 'asked'>('idle');
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const wait = (next: typeof state, ms: number, then: () => void) => {
    clearTimeout(timer.current);
    setState(next);
    timer.current = setTimeout(() => {
      setState('idle');
      then();
    }, ms);
  };
  const letGo = () => {
    if (state !== 'held') return;
    clearTimeout(timer.current);
    setState('idle');
  };
  return (
    <button
      type="button"
      className={`${styles.hold} ${className ?? ''}`}
      data-main={isMain ? '' : undefined}
      data-held={state === 'held' ? '' : undefined}
      onPointerDown={({ isPrimary, button }) => isPrimary && button === 0 && wait('held', HOLD_MS, press)}
      onPointerUp={letGo}
      onPointerLeave={letGo}
      onPointerCancel={letGo}
      onContextMenu={(event) => event.preventDefault()}
      onClick={({ detail }) => {
        // A pointer has held it, or has not: what comes without one is a key or another program.
        if (detail > 0) return;
        if (state !== 'asked') return wait('asked', AGAIN_MS, () => {});
        clearTimeout(timer.current);
        setState('idle');
        press();
      }}
    >
      <span className={styles.words}>
        {children}
        <span className={styles.how} aria-hidden={state !== 'asked'}>
          {state === 'asked' ? 'Press once more' : 'Hold'}
        </span>
      </span>
    </button>
  );
}
