'use client';

import { useState } from 'react';
import { sendMix } from '@/app/_parts/send-mix';
import { splitAmount } from '@/shared/measure/amount-typed';
import { fillsMixed, finishBodyOf, sprayedText, stopsOf } from '@/shared/mix/finish-body';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { AnswerField } from './answer-field';
import { BenchTicks } from './bench-ticks';
import { ClockWasSet } from './device-clock';
import styles from './do.module.css';
import { EndedAt } from './ended-at';
import { FaultList } from './fault-list';
import { Frame, type ScreenProps } from './frame';
import { LeftoverFields } from './leftover-fields';
import { StopReasons } from './stop-reasons';
import { WentIn } from './went-in';
import { WhatTheShopKnows } from './what-the-shop-knows';
import { WhichTurn } from './which-turn';

/** What the record asks for at the end: times, who, how warm it was, what was left over, and why it was sprayed where a rule said stop. */
export function FinishScreen({ mix, act, screen }: ScreenProps) {
  const [asked, setAsked] = useState(false);
  const { plan, refusal } = mix;
  const finishing = finishBodyOf(mix);
  const faults = asked && !finishing.ok ? finishing.faults : [];
  const refused = refusal?.faults ?? [];
  const stops = stopsOf(mix);
  const its = { mix, act, faults: [...faults, ...refused] };
  const finish = () => {
    if (!finishing.ok) return setAsked(true);
    act({ do: 'finish' });
    void sendMix(mix.commandId);
  };
  return (
    <Frame {...{ mix, act, screen }} heading="Done" primary={{ text: 'Write it into the record', press: finish }}>
      <FaultList {...{ mix, act, faults, refusal }} />
      <ClockWasSet mix={mix} />
      <EndedAt mix={mix} act={act} />
      <WhatTheShopKnows mix={mix} />
      <div className={styles.fields}>
        <WhichTurn mix={mix} act={act} />
        <AnswerField {...its} field="startedAt" label="Spraying began" type="datetime-local" />
        <AnswerField {...its} field="endedAt" label="The last plant was sprayed" type="datetime-local" />
        <AnswerField {...its} field="by" label="Who sprayed" />
        <LeftoverFields {...its} />
        <AnswerField
          {...its}
          field="temperature"
          label={`How warm it was, ${plan.units === 'us' ? '°F' : '°C'} (if you know)`}
          placeholder={plan.units === 'us' ? '65, or 18.5 C' : '18.5, or 65 F'}
        />
        <AnswerField
          {...its}
          field="conditions"
          label="Weather, or the house (if you want)"
          placeholder="calm, shaded"
        />
        <StopReasons mix={mix} act={act} stops={stops} isAsked={asked} />
        <details className={styles.more} open={plan.benches.length === 0 || undefined}>
          <summary>What was sprayed: {said(mix)}</summary>
          <AnswerField {...its} field="sprayed" label="How much spray was mixed" placeholder={asMixed(mix)} isSpray />
          <AnswerField {...its} field="plants" label="Which plants, when not all" />
          <BenchTicks
            legend="On which benches"
            benches={plan.shopBenches}
            ticked={mix.benches}
            tick={(ids) => act({ do: 'benches', ids })}
          />
        </details>
        <WentIn mix={mix} act={act} />
      </div>
    </Frame>
  );
}

/** What was mixed as planned, in the unit of the jug where it is one amount there. */
const asMixed = (mix: MixProgress): string =>
  fillsMixed(mix) === mix.plan.fills && splitAmount(mix.plan.sprayText, 'spray').unit !== null
    ? mix.plan.sprayText
    : sprayedText(mix);

function said(mix: MixProgress): string {
  const { plan, benches } = mix;
  const names = plan.shopBenches.filter(({ id }) => benches.includes(id)).map(({ name }) => name);
  const fills = fillsMixed(mix);
  return `${names.join(', ') || 'no bench named yet'}, ${fills === plan.fills ? plan.sprayText : `${fills} of ${plan.fills} fills`}`;
}
