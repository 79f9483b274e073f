import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type RotationBench, type RotationScreen, type RotationTurn, rotationScreen } from '@/lib/views/rotation';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { FirstVisit } from '../../_parts/first-visit';
import { SeverityMark } from '../../_parts/flag-lines';
import { Fold } from '../../_parts/fold';
import styles from './modes.module.css';

export const metadata: Metadata = { title: 'Modes of action' };

async function ModesPage() {
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
        The shop allows the same mode group {sameModeInARow} times in a row on a bench, one of high resistance risk
        once. Sub-groups count as their group. Sprayings without any group do not count; groups that are multi-site or
        of unknown mode never count as repeated.
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
        {programs.map(({ id, recipes, message }) => (
          <li key={id}>
            <a href={`/setup/programs/${encodeURIComponent(id)}`}>{recipes.join(', then ')}</a>
            <span>{message}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Benches({ screen: { benches, today } }: { screen: RotationScreen }) {
  if (benches.length === 0) return null;
  return (
    <section aria-labelledby="benches">
      <h2 id="benches">What each bench had and will have</h2>
      <div>
        {benches.map((bench) => (
          <Bench key={bench.id} bench={bench} today={today} />
        ))}
      </div>
    </section>
  );
}

function Bench({ bench: { name, groups, firstOver, turns }, today }: { bench: RotationBench; today: Day }) {
  const digest = groups.length === 0 ? 'no mode of action that counts' : groups.join(', ');
  const notes = firstOver && (
    <span className={styles.over}>
      <SeverityMark severity="warn" />
      <span>
        {firstOver.group} comes {firstOver.inARow} times in a row on {showDayShort(firstOver.on, today)}
      </span>
    </span>
  );
  return (
    <Fold title={name} digest={digest} notes={notes} isOpen={false}>
      <ol className={styles.turns}>
        {turns.map((turn, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a bench may get one recipe twice a day; its place tells them apart.
          <li key={place} data-planned={turn.isPlanned || undefined}>
            <b>{showDayShort(turn.on, today)}</b> {turn.recipe}
            <Modes turn={turn} />
          </li>
        ))}
      </ol>
    </Fold>
  );
}

function Modes({ turn: { modes, isPlanned } }: { turn: RotationTurn }) {
  return (
    <span className="soft">
      {isPlanned ? 'planned' : 'recorded'}
      {modes.length === 0
        ? ' · no mode of action'
        : modes.map(({ group, countsAs, inARow, isOver }) => (
            <span key={group} className={isOver ? 'grave' : undefined}>
              {' · '}
              {isOver && <SeverityMark severity="warn" />} {group}
              {countsAs === null && ', never a repeat'}
              {inARow > 1 && `, ${inARow} in a row`}
            </span>
          ))}
    </span>
  );
}

export default doorPage('see-shop', ModesPage);
