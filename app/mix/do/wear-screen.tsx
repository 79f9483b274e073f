'use client';

import styles from './do.module.css';
import { Frame, type ScreenProps } from './frame';
import { Ready } from './ready';

/** What to put on, and what the labels say about staying out and about time. */
export function WearScreen({ mix, act, screen }: ScreenProps) {
  const { plan } = mix;
  const on = () => act({ do: 'tick', what: 'wear', on: true }, { do: 'next', from: screen.key });
  return (
    <Frame {...{ mix, act, screen }} heading="Put on" primary={{ text: 'I have these on', press: on }}>
      {plan.signalWord && <p className={styles.signal}>{plan.signalWord}</p>}
      <ul className={styles.pieces}>
        {plan.equipment.map((piece) => (
          <li key={piece}>{piece}</li>
        ))}
      </ul>
      {plan.equipmentUnknown.length > 0 && (
        <p className={styles.why} data-grave="">
          What {plan.equipmentUnknown.join(', ')} asks for was never entered: <b>read the label first.</b>
        </p>
      )}
      <dl className={styles.facts}>
        <div>
          <dt>Keep out for</dt>
          <dd>
            {plan.reiMinutes === 0
              ? 'no time that the labels ask for'
              : (plan.rei ?? <b className="grave">not known: keep out until it is entered</b>)}
          </dd>
        </div>
        <div>
          <dt>Use within</dt>
          <dd>{plan.useWithin ?? 'not noted: use it at once'}</dd>
        </div>
      </dl>
      <h2>Before the first pour</h2>
      <Ready plan={plan} />
      {plan.warnings.map((message) => (
        <p key={message} className={styles.why}>
          {message}
        </p>
      ))}
      <p className="soft">The label governs. This page only repeats what was typed in from it.</p>
    </Frame>
  );
}
