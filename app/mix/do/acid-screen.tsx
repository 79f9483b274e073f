'use client';

import { shopNow } from '@/app/_parts/shop-clock';
import { type MixPlan, productIn } from '@/shared/mix/mix-plan';
import { AmountField } from './amount-field';
import styles from './do.module.css';
import { FillingJug } from './filling-jug';
import { Frame, type ScreenProps } from './frame';
import { OwnAcidSaid, PhSaid } from './ph-said';

/** Two thirds of the acid, to be stirred in and measured. Never the whole, and never as certain. */
export function AcidScreen({ mix, act, screen, fill }: ScreenProps & { fill: number }) {
  const { plan } = mix;
  const noted = mix.acids.find((one) => one.fill === fill);
  const acid = plan.acids.find(({ product }) => product === noted?.product) ?? plan.acids[0];
  if (!acid) return null;
  const first = noted?.first ?? acid.firstText ?? '';
  const note = (product: string, text: string) =>
    act({ do: 'acid', pour: { fill, product, first: text, more: noted?.more ?? '' } });
  const on = () => {
    note(acid.product, first);
    act({ do: 'mixing', fill, at: shopNow() }, { do: 'next', from: screen.key });
  };
  const without = () => {
    note(acid.product, '');
    act({ do: 'next', from: screen.key });
  };
  return (
    <Frame
      {...{ mix, act, screen }}
      above={`Acid, two thirds of it first: pH ${plan.pH?.before ?? 'not known'} to ${plan.pH?.target ?? ''}`}
      heading={productIn(plan, acid.product).name}
      primary={{ text: 'In and stirred', press: on }}
      other={{ text: 'No acid', press: without }}
    >
      <div className={styles.beside2}>
        <div>
          <p className={styles.amount} data-long="">
            {acid.firstText ?? 'not known'}
          </p>
          <p className="soft">
            {acid.firstWith && `${acid.firstWith}, `}
            {acid.allText && `of about ${acid.allText}. `}
            {acid.expectedPh && `Expect about pH ${acid.expectedPh}. `}
            {acid.missing}
          </p>
        </div>
        <FillingJug level={0.82} liquid="other" />
      </div>
      <OwnAcidSaid plan={plan} />
      <div className={styles.fields}>
        {plan.acids.length > 1 && <WhichAcid plan={plan} chosen={acid.product} note={note} />}
        <label htmlFor="acid-first">How much went in</label>
        <AmountField
          id="acid-first"
          text={first}
          kind={productIn(plan, acid.product).form}
          change={(text) => note(acid.product, text)}
        />
      </div>
      <PhSaid plan={plan} />
      <p className={styles.why}>
        Acid into water, never water into acid. Stir, wait a minute, then measure: what the water takes can differ from
        any estimate.
      </p>
    </Frame>
  );
}

type WhichProps = { plan: MixPlan; chosen: string; note: (product: string, text: string) => void };

function WhichAcid({ plan, chosen, note }: WhichProps) {
  return (
    <fieldset className={styles.radios}>
      <legend>Which acid</legend>
      {plan.acids.map(({ product, firstText }) => (
        <label key={product} className={styles.check}>
          <input
            type="radio"
            name="acid"
            checked={product === chosen}
            onChange={() => note(product, firstText ?? '')}
          />
          {productIn(plan, product).name}
        </label>
      ))}
    </fieldset>
  );
}
