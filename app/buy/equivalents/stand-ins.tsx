import { clock } from '@/lib/clock';
import { type StandInsScreen, standInsScreen } from '@/lib/views/stand-ins';
import { showDay } from '@/shared/time/show-day';
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
      <WhichBottle screen={screen} />
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

/** "I have this bottle; where can it stand in?" */
function WhichBottle({ screen: { bottles, product } }: { screen: StandInsScreen }) {
  if (bottles.length === 0) return null;
  return (
    <form action="/buy/equivalents" method="get" className={styles.which}>
      <div>
        <label htmlFor="bottle">A bottle that I have</label>
        <select id="bottle" name="product" defaultValue={product?.id}>
          {bottles.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit">Where can it stand in?</button>
    </form>
  );
}

function CouldStand({ screen: { standIns, ways }, name }: { screen: StandInsScreen; name: string }) {
  return (
    <section aria-labelledby="could">
      <h2 id="could">Where {name} could stand in</h2>
      {standIns.length === 0 && <EmptyPlace>No other recipe takes a substance that it holds.</EmptyPlace>}
      <ul className={styles.list}>
        {standIns.map(({ recipe, instead, now, dose, perLitre, allowed, reasons, href }) => (
          <li key={href}>
            <a href={href}>
              {recipe}, instead of {now} of {instead}
            </a>
            <p>
              Equal dose <Figure of={dose} ways={ways} />, a litre of spray <Figure of={perLitre} ways={ways} />.
            </p>
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
        {useUps.map(({ key, href, recipe, instead, ...one }) => (
          <li key={key}>
            <a href={href}>
              {one.product} in {recipe}, instead of {instead}
            </a>
            <p>
              <Figure of={one.wasted} ways={ways} /> of it worth <Figure of={one.wasteCost} ways={ways} /> will die on{' '}
              {showDay(one.diesOn, ways.today)}. <Figure of={one.sprayings} ways={ways} /> before that would use up{' '}
              <Figure of={one.amount} ways={ways} /> of that, and save{' '}
              <b>
                <Figure of={one.saves} ways={ways} />
              </b>{' '}
              of {instead} at its cheapest offer.
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
