'use client';

import { useState } from 'react';
import { deviceAhead, shopNow } from '@/app/_parts/shop-clock';
import { stopsOf } from '@/shared/mix/finish-body';
import type { MixAction } from '@/shared/mix/mix-action';
import { fillsOf } from '@/shared/mix/mix-screens';
import { instantOf } from '@/shared/time/instant';
import { nextMinute } from '@/shared/time/local-time';
import { showClock } from '@/shared/time/show-day';
import { BenchTicks } from './bench-ticks';
import styles from './do.module.css';
import { Frame, type ScreenProps } from './frame';
import { HoldButton } from './hold-button';
import { StopReasons } from './stop-reasons';
import { useJudgedStart } from './use-judged-start';
import { WhatTheShopKnows } from './what-the-shop-knows';

/** Spraying: when it began, and whether there is another fill. */
export function SprayScreen({ mix, act, screen, fill }: ScreenProps & { fill: number }) {
  const { plan, sprayingSince } = mix;
  const isLast = fill + 1 >= fillsOf(mix);
  const begun = sprayingSince !== null;
  const [isBenchMissing, setBenchMissing] = useState(false);
  const { open, isAsked, isJudging, start: startAsJudged } = useJudgedStart(mix, act);
  const start = () => {
    if (mix.benches.length === 0) return setBenchMissing(true);
    void startAsJudged();
  };
  // Up to the minute: an interval may never begin to count too soon.
  const ended = (): MixAction => ({ do: 'sprayed', until: nextMinute(shopNow()), ahead: deviceAhead() });
  const on = () => act(...(isLast ? [ended()] : []), { do: 'next', from: screen.key });
  return (
    <Frame
      {...{ mix, act, screen }}
      above={plan.benches.map(({ name }) => name).join(', ')}
      heading="Spray"
      primary={
        begun
          ? { text: isLast ? 'The last plant is sprayed' : `On to fill ${fill + 2}`, press: on, isHeld: isLast }
          : { text: isJudging ? 'Looking at the rules…' : 'Start spraying now', press: start, isHeld: true }
      }
    >
      {plan.plantsText && <p className={styles.lead}>{plan.plantsText}</p>}
      <p className={styles.lead}>
        {begun ? (
          <>
            Begun at <b>{showClock(instantOf(sprayingSince), plan.zone)}</b>. The time can be changed at the end.
          </>
        ) : (
          'Hold the button when the first plant is sprayed: its benches read KEEP OUT from then on.'
        )}
      </p>
      <p className={styles.why} data-grave="">
        {keepOutText(plan)}
      </p>
      {!begun && (isAsked || open.length > 0) && (
        <StopReasons mix={mix} act={act} stops={stopsOf(mix)} isAsked={isAsked} />
      )}
      {begun && <WhatTheShopKnows mix={mix} />}
      {(plan.benches.length === 0 || isBenchMissing) && (
        <BenchTicks
          legend="On which benches"
          benches={plan.shopBenches}
          ticked={mix.benches}
          tick={(ids) => act({ do: 'benches', ids })}
        />
      )}
      {isBenchMissing && <p role="alert">Name the benches that are sprayed first: they are closed from then on.</p>}
      {begun && !isLast && (
        <div className={styles.choices}>
          <HoldButton press={() => act(ended(), { do: 'same-again', fill })}>
            The other fills went in the same: to the record
          </HoldButton>
          <HoldButton press={() => act(ended(), { do: 'no-more', fill })}>It was enough: no more fills</HoldButton>
        </div>
      )}
    </Frame>
  );
}

function keepOutText({ rei, reiMinutes }: ScreenProps['mix']['plan']): string {
  if (rei === null) return 'Keep out until the interval on the label is known.';
  return reiMinutes === 0 ? 'The labels ask for no time to keep out.' : `Keep out for ${rei} after the last plant.`;
}
