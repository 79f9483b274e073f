'use client';

import { useState } from 'react';
import styles from './do.module.css';
import { Frame, type ScreenProps } from './frame';
import { StopReasons } from './stop-reasons';

/** What says stop to this mix, before anything is poured. Whoever goes on all the same says why. */
export function StopsScreen({ mix, act, screen }: ScreenProps) {
  const [asked, setAsked] = useState(false);
  const { stops } = mix.plan;
  const open = stops.some(({ rule }) => (mix.reasons[rule] ?? '').trim() === '');
  const on = () => (open ? setAsked(true) : act({ do: 'next', from: screen.key }));
  return (
    <Frame
      {...{ mix, act, screen }}
      heading="Stop"
      above="Before anything is poured"
      primary={{ text: 'Go on all the same', press: on, isMain: false }}
    >
      <p className={styles.why}>
        This should not be sprayed as it is. To leave it, close this page. To spray it all the same, write why; it goes
        into the record.
      </p>
      <StopReasons mix={mix} act={act} stops={stops} isAsked={asked} />
    </Frame>
  );
}
