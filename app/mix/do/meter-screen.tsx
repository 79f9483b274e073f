'use client';

import { pHOf } from '@/shared/mix/finish-body';
import { productIn } from '@/shared/mix/mix-plan';
import { AmountField } from './amount-field';
import styles from './do.module.css';
import { Frame, type ScreenProps } from './frame';
import { OwnAcidSaid, PhSaid } from './ph-said';

/** What the meter says, and the drops that bring it to the target. Kept with the record. */
export function MeterScreen({ mix, act, screen, fill }: ScreenProps & { fill: number }) {
  const { plan } = mix;
  const reading = mix.readings.find((one) => one.fill === fill)?.pH ?? '';
  const own = plan.ownAcid === null ? null : { fill, product: plan.ownAcid, first: '', more: '' };
  const acid = mix.acids.find((one) => one.fill === fill) ?? own;
  const target = Number(plan.pH?.target);
  const measured = pHOf(reading);
  const isNear = measured !== null && Math.abs(measured - target) <= NEAR;
  const above = measured !== null && measured > target + NEAR;
  return (
    <Frame
      {...{ mix, act, screen }}
      above={`Target pH ${plan.pH?.target ?? ''}`}
      heading="Measure the pH"
      primary={{
        text: reading.trim() === '' ? 'Not measured' : isNear ? 'Good so' : 'Go on off target',
        isMain: isNear,
        press: () => act({ do: 'next', from: screen.key }),
      }}
    >
      <div className={styles.fields}>
        <label htmlFor="meter">What the meter says</label>
        <input
          id="meter"
          className={styles.large}
          inputMode="decimal"
          autoComplete="off"
          value={reading}
          aria-invalid={reading.trim() !== '' && measured === null}
          onChange={({ target: field }) => act({ do: 'reading', fill, pH: field.value })}
          aria-describedby="meter-said"
        />
        <p id="meter-said" role="status">
          {reading.trim() !== '' && measured === null && 'Write a number from 0 to 14, such as 6.2.'}
          {measured !== null && !above && measured >= target - NEAR && 'That is the target.'}
          {measured !== null && measured < target - NEAR && 'That is below the target. Add no more acid.'}
          {above && 'Still above the target: a few drops, stir, measure again, and write the new figure over it.'}
        </p>
        {acid && (acid.first.trim() !== '' || acid.product === plan.ownAcid) && (
          <>
            <label htmlFor="acid-more">{productIn(plan, acid.product).name} added since, in all</label>
            <AmountField
              id="acid-more"
              text={acid.more}
              kind={productIn(plan, acid.product).form}
              change={(more) => act({ do: 'acid', pour: { ...acid, more } })}
            />
          </>
        )}
      </div>
      {plan.acids.length === 0 && <OwnAcidSaid plan={plan} />}
      <PhSaid plan={plan} />
      <p className={styles.why}>Without a meter, go on: the record then says that it was not measured.</p>
    </Frame>
  );
}

/** How near a kit or a pen comes to a target. */
const NEAR = 0.25;
