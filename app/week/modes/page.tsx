import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type RotationScreen, type RotationTurn, rotationScreen } from '@/lib/views/rotation';
import { showDayShort } from '@/shared/time/show-day';
import { FirstVisit } from '../../_parts/first-visit';
import styles from './modes.module.css';

export const metadata: Metadata = { title: 'Modes of action' };

export default async function ModesPage() {
  const screen = await rotationScreen(clock);
  if (!screen) return <FirstVisit />;
  const { sameModeInARow, notEntered } = screen;
  return (
    <>
      <p>
        <a href="/week">Week</a>
      </p>
      <h1>Modes of action</h1>
      <p className="soft">
        The shop allows the same mode group {sameModeInARow} times in a row on a bench. Sprayings without any group do
        not count.
      </p>
      <Programs screen={screen} />
      <Benches screen={screen} />
      {notEntered.length > 0 && (
        <section aria-labelledby="missing">
          <h2 id="missing">Not entered, and so not counted</h2>
          <ul className={styles.list}>
            {notEntered.map(({ id, name, published }) => (
              <li key={id}>
                <a href={`/shelf/${encodeURIComponent(id)}/edit`}>{name}</a>
                <span>published as {published.join(', ')}; look at its label</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Programs({ screen: { programs } }: { screen: RotationScreen }) {
  if (programs.length === 0) return <p>No program holds a product with a mode of action.</p>;
  return (
    <section aria-labelledby="programs">
      <h2 id="programs">The order of recipes</h2>
      <ul className={styles.list}>
        {programs.map(({ id, recipes, proposed, isAsNow, message }) => (
          <li key={id}>
            <a href={`/setup/programs/${encodeURIComponent(id)}`}>{recipes.join(', then ')}</a>
            <span>{message}</span>
            {!isAsNow && <b>Proposed: {proposed.join(', then ')}</b>}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Benches({ screen: { benches, today } }: { screen: RotationScreen }) {
  return (
    <section aria-labelledby="benches">
      <h2 id="benches">What each bench had and will have</h2>
      {benches.map(({ id, name, turns }) => (
        <section key={id} aria-label={name}>
          <h3>{name}</h3>
          <ol className={styles.turns}>
            {turns.map((turn, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a bench may get one recipe twice a day; its place tells them apart.
              <li key={place} data-planned={turn.isPlanned || undefined}>
                <b>{showDayShort(turn.on, today)}</b> {turn.recipe}
                <Modes turn={turn} />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </section>
  );
}

function Modes({ turn: { modes, isPlanned } }: { turn: RotationTurn }) {
  return (
    <span className="soft">
      {isPlanned ? 'planned' : 'recorded'}
      {modes.length === 0
        ? ' · no mode of action'
        : modes.map(({ group, inARow, isOver }) => (
            <span key={group} className={isOver ? 'grave' : undefined}>
              {isOver ? ' · ▲ ' : ' · '}
              {group}
              {inARow > 1 && `, ${inARow} in a row`}
            </span>
          ))}
    </span>
  );
}
