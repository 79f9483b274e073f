import { clock } from '@/lib/clock';
import { type StandInsScreen, standInsScreen } from '@/lib/views/stand-ins';
import { EmptyPlace } from '../../_parts/empty-place';
import { Figure } from '../../_parts/figure';
import { FirstVisit } from '../../_parts/first-visit';
import styles from './equivalents.module.css';

type StandInsProps = { product: string | undefined; isLost: boolean };

/** Where something else could stand; where this product could; and what is about to die that could be used up. */
export async function StandIns({ product, isLost }: StandInsProps) {
  const screen = await standInsScreen(clock, product);
  if (!screen) return <FirstVisit />;
  const { product: asked } = screen;
  return (
    <>
      {isLost && <p className="grave">This recipe does not have that product, or its contents are not entered.</p>}
      {asked && (
        <p>
          About <a href={`/shelf/${encodeURIComponent(asked.id)}`}>{asked.name}</a>.{' '}
          <a href="/buy/equivalents">About every product</a>
        </p>
      )}
      {asked && <CouldStand screen={screen} name={asked.name} />}
      <Places screen={screen} />
      <UseUps screen={screen} />
    </>
  );
}

function CouldStand({ screen: { standIns }, name }: { screen: StandInsScreen; name: string }) {
  return (
    <section aria-labelledby="could">
      <h2 id="could">Where {name} could stand in</h2>
      {standIns.length === 0 && <EmptyPlace>No other recipe takes a substance that it holds.</EmptyPlace>}
      <ul className={styles.list}>
        {standIns.map(({ recipe, instead, dose, allowed, reasons, href }) => (
          <li key={href}>
            <a href={href}>
              {recipe}, instead of {dose} of {instead}
            </a>
            <p className={allowed ? 'soft' : 'grave'}>{allowed ? 'Allowed.' : `Not allowed. ${reasons.join(' ')}`}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Places({ screen: { places, product } }: { screen: StandInsScreen }) {
  return (
    <section aria-labelledby="places">
      <h2 id="places">{product ? `What could stand in for it` : 'What something else could stand in for'}</h2>
      {places.length === 0 && <EmptyPlace>No other product has the same substance.</EmptyPlace>}
      <ul className={styles.list}>
        {places.map(({ recipe, product: name, dose, others, href }) => (
          <li key={href}>
            <a href={href}>
              {recipe}: {dose} of {name}
            </a>
            <p className="soft">{others.join(', ')} would bring as much.</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function UseUps({ screen: { useUps, ways } }: { screen: StandInsScreen }) {
  return (
    <section aria-labelledby="use-up">
      <h2 id="use-up">Use up what is about to die</h2>
      {useUps.length === 0 && <EmptyPlace>Nothing that will die could stand anywhere else.</EmptyPlace>}
      <ul className={styles.list}>
        {useUps.map(({ key, product, wasted, wasteCost, words, href }) => (
          <li key={key}>
            <b>{product}</b>, of which <Figure of={wasted} ways={ways} /> worth <Figure of={wasteCost} ways={ways} />{' '}
            will die. <a href={href}>{words}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
