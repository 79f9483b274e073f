'use client';

import { type ReactNode, useEffect, useRef } from 'react';
import { EmergencyLink } from '@/app/_parts/emergency-link';
import { isUnkept } from '@/app/_parts/kept-mixes';
import type { MixAction } from '@/shared/mix/mix-action';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { fillsOf, keyBeside, type Screen, screensOf } from '@/shared/mix/mix-screens';
import { DeviceClock } from './device-clock';
import styles from './do.module.css';
import { FillBar } from './fill-bar';
import { HoldButton } from './hold-button';
import { useSettling } from './use-settling';
import { UseWithin } from './use-within';

export type Act = (...actions: MixAction[]) => void;
export type ScreenProps = { mix: MixProgress; act: Act; screen: Screen };

type FrameProps = ScreenProps & {
  heading: ReactNode;
  /** What stands above the heading, smaller. */
  above?: ReactNode;
  children: ReactNode;
  /** The one thing to press, and what it says. */
  primary: { text: string; press: () => void; isMain?: boolean; isHeld?: boolean };
  /** What else there is to press, beside it. */
  other?: { text: string; press: () => void; isOpen?: boolean };
};

/**
 * What every screen of a mix stands in: where one is, what to wear, and at the bottom, under the thumb, on and back.
 * Enter or the right arrow go on; Backspace or the left arrow go back.
 */
export function Frame({ mix, act, screen, heading, above, children, primary, other }: FrameProps) {
  const title = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each screen begins at its heading.
  useEffect(() => {
    title.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, [screen.key]);
  const back = () => act({ do: 'back', from: screen.key });
  const isSettling = useSettling(`${screen.key} ${primary.text}`);
  // What is held by a finger is not done by one key.
  useOnKeys(isSettling || primary.isHeld ? NOTHING : primary.press, isSettling ? NOTHING : back);
  const isFirst = keyBeside(mix, -1) === screen.key;
  return (
    <div className={styles.frame} data-alone="" data-settling={isSettling ? '' : undefined}>
      <Top mix={mix} screen={screen} />
      <div className={styles.middle}>
        {above && <p className={`soft ${styles.above}`}>{above}</p>}
        <h1 ref={title} tabIndex={-1} className={styles.heading}>
          {heading}
        </h1>
        {children}
      </div>
      <div className={styles.bottom}>
        <button type="button" className={styles.back} onClick={back} disabled={isFirst} aria-label="Back">
          <span aria-hidden="true">←</span>
        </button>
        {other && (
          <button type="button" onClick={other.press} aria-expanded={other.isOpen}>
            {other.text}
          </button>
        )}
        <Go primary={primary} />
      </div>
    </div>
  );
}

const NOTHING = () => {};

function Go({ primary: { text, press, isMain, isHeld } }: Pick<FrameProps, 'primary'>) {
  const isFirst = isMain !== false;
  if (isHeld) {
    return (
      <HoldButton key={text} className={styles.go} isMain={isFirst} press={press}>
        {text}
      </HoldButton>
    );
  }
  return (
    <button type="button" className={styles.go} data-main={isFirst ? '' : undefined} onClick={press}>
      {text}
    </button>
  );
}

function Top({ mix, screen }: Pick<ScreenProps, 'mix' | 'screen'>) {
  const { plan } = mix;
  const fills = fillsOf(mix);
  return (
    <>
      <div className={styles.top}>
        <b>{plan.recipe.name}</b>
        {'fill' in screen && (
          <span className="soft">
            fill {screen.fill + 1} of {fills}
          </span>
        )}
        <EmergencyLink isShort />
        <a className={styles.leave} href="/mix">
          <span aria-hidden="true">✕</span>
          <span className="spoken">Leave; the mix is kept on this device</span>
        </a>
      </div>
      {screen.kind !== 'wear' && screen.kind !== 'stops' && screen.kind !== 'finish' && (
        <p className={styles.wear}>
          <Hand />
          <span className={styles.worn}>
            {plan.equipment.length > 0 ? `${plan.equipment.join(', ')}. ` : ''}The label governs.
          </span>
        </p>
      )}
      <FillBar screens={screensOf(mix)} at={screen} />
      {'fill' in screen && <UseWithin mix={mix} fill={screen.fill} />}
      <DeviceClock />
      {isUnkept(mix.commandId) && (
        <p className={styles.unkept} role="alert">
          This browser keeps nothing: leave this page open until the mix is on record.
        </p>
      )}
    </>
  );
}

const Hand = () => (
  <svg width="26" height="26" viewBox="0 0 24 24" aria-hidden="true" className={styles.hand}>
    <path d="M7 22 V13 L5 9 q-.6-2 1-2.2 L9 10 V3.5 q0-1.5 1.4-1.5 t1.4 1.5 V3 q0-1.5 1.4-1.5 T14.6 3 v1 q0-1.3 1.3-1.3 T17.2 4 v2 q0-1.2 1.2-1.2 t1.2 1.2 V15 l-2 7Z" />
  </svg>
);

/** The keys that go on and back, wherever nothing is being typed or pressed. */
function useOnKeys(on: () => void, back: () => void): void {
  const latest = useRef({ on, back });
  useEffect(() => {
    latest.current = { on, back };
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      if (event.defaultPrevented || event.repeat || event.ctrlKey || event.metaKey || event.altKey) return;
      if (target?.closest('input, select, textarea, dialog')) return;
      const isOnKey = target?.closest('button, a, summary') !== null;
      if (event.key === 'ArrowRight' || (event.key === 'Enter' && !isOnKey)) latest.current.on();
      else if (event.key === 'ArrowLeft' || event.key === 'Backspace') latest.current.back();
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, []);
}
