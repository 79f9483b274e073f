'use client';

import styles from './do.module.css';
import { FillingJug } from './filling-jug';
import { Frame, type ScreenProps } from './frame';

/** Water first, from half to three quarters of the fill. */
export function WaterScreen({ mix, act, screen, fill }: ScreenProps & { fill: number }) {
  const { plan } = mix;
  const on = () => act({ do: 'tick', what: `water ${fill}`, on: true }, { do: 'next', from: screen.key });
  return (
    <Frame
      {...{ mix, act, screen }}
      above={plan.fills > 1 ? `Into ${plan.sprayer}, fill ${fill + 1} of ${plan.fills}` : `Into ${plan.sprayer}`}
      heading="Water first"
      primary={{ text: 'Water is in', press: on }}
    >
      <div className={styles.beside2}>
        <p className={styles.amount} data-long="">
          {plan.waterFirstText}
        </p>
        <FillingJug level={0.5} liquid={null} />
      </div>
      <p className={styles.why}>
        Moving water takes up what is poured into it. The rest comes last, up to {plan.fillText}.
      </p>
    </Frame>
  );
}
