'use client';

import { bottlesToTake } from '@/shared/mix/bottles-to-take';
import { bottleKey, productIn } from '@/shared/mix/mix-plan';
import { CodeField } from './code-field';
import styles from './do.module.css';
import { Frame, type ScreenProps } from './frame';

/** The bottles to take down, each ticked by hand or by its code. */
export function BottlesScreen({ mix, act, screen }: ScreenProps) {
  const bottles = bottlesToTake(mix);
  const isTaken = (key: string) => mix.ticked.includes(`bottle ${key}`);
  const scanned = (product: string, bottle: { lotId: string; place: number }) => {
    const key = bottleKey(bottle);
    const isMeant = bottles.some((one) => bottleKey(one.bottle) === key);
    act(...(isMeant ? [] : [{ do: 'choose' as const, product, bottle }]), {
      do: 'tick',
      what: `bottle ${key}`,
      on: true,
    });
    return isMeant ? 'Right: ticked.' : `Noted: ${productIn(mix.plan, product).name} comes from this bottle.`;
  };
  return (
    <Frame
      {...{ mix, act, screen }}
      heading="Take down"
      primary={{ text: 'All here', press: () => act({ do: 'next', from: screen.key }) }}
    >
      <ul className={styles.ticks}>
        {bottles.map(({ product, bottle, takeText }) => (
          <li key={bottleKey(bottle)}>
            <label>
              <input
                type="checkbox"
                checked={isTaken(bottleKey(bottle))}
                onChange={({ target }) => act({ do: 'tick', what: `bottle ${bottleKey(bottle)}`, on: target.checked })}
              />
              <span>
                <b>{product.name}</b> {takeText}
                <span className={styles.beside}>
                  {bottle.code}
                  {bottle.keptIn && `, in ${bottle.keptIn}`}
                  {bottle.opened ? ', opened' : ', not opened yet'}
                  {bottle.expired !== null && <b className="grave">, EXPIRED {bottle.expired}</b>}
                </span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {bottles.length === 0 && <p className={styles.why}>None of the bottles in the books has what this takes.</p>}
      <CodeField plan={mix.plan} among={bottles.map(({ product }) => product.id)} found={scanned} />
    </Frame>
  );
}
