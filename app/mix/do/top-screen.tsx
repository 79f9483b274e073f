'use client';

import styles from './do.module.css';
import { FillingJug } from './filling-jug';
import { Frame, type ScreenProps } from './frame';

/** The rest of the water, up to the mark. */
export function TopScreen({ mix, act, screen, fill }: ScreenProps & { fill: number }) {
  const { plan } = mix;
  const on = () => act({ do: 'tick', what: `top ${fill}`, on: true }, { do: 'next', from: screen.key });
  return (
    <Frame
      {...{ mix, act, screen }}
      above="The rest of the water"
      heading="Fill up to"
      primary={{ text: 'Full and stirred', press: on }}
    >
      <div className={styles.beside2}>
        <p className={styles.amount} data-long="">
          {plan.fillText}
        </p>
        <FillingJug level={1} liquid={plan.products.find(({ id }) => id === plan.pours[0]?.product)?.liquid ?? null} />
      </div>
      {plan.burn && (
        <p className={styles.why} data-grave="">
          <b>May burn leaves.</b> {plan.burn}
        </p>
      )}
    </Frame>
  );
}
