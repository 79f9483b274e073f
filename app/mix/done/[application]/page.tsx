import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Figure } from '@/app/_parts/figure';
import { SeverityLines } from '@/app/_parts/flag-lines';
import { PassedLine } from '@/app/_parts/passed-line';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type MixedScreen, mixedScreen } from '@/lib/views/mixed';
import { AfterList } from '../../after-list';
import { CostByLine } from './cost-by-line';
import styles from './mixed.module.css';

export const metadata: Metadata = { title: 'Mixed' };

type OfRecord = { params: Promise<{ application: string }> };

/** What a finished mix came to: which benches are closed until when, what it cost beside what was planned, what is left. */
async function MixedPage({ params }: OfRecord) {
  const screen = await mixedScreen(clock, decodeURIComponent((await params).application));
  if (!screen) notFound();
  return (
    <div className={styles.mixed}>
      <h1>{screen.recipe.name}: on record</h1>
      <p className="soft">
        {screen.when}
        {screen.by && `, by ${screen.by}`}
        {screen.sprayed && `, ${screen.sprayed}`}
        {screen.pH && `, pH ${screen.pH}`}
      </p>
      {screen.findings.length > 0 && (
        <div className="apart">
          <SeverityLines lines={screen.findings} />
        </div>
      )}
      <Benches benches={screen.benches} />
      <AfterList benches={screen.benches.filter(({ state }) => state !== 'open')} leftover={screen.leftover} />
      {screen.isUnconfirmed && (
        <p>
          By its end, this interval is over already. Until somebody confirms that end, it counts from now.{' '}
          <a href={`/log/${encodeURIComponent(screen.application)}`}>Confirm the record</a>
        </p>
      )}
      <CostByLine
        application={screen.application}
        currency={screen.ways.currency}
        lines={screen.lines}
        cost={screen.cost}
        planned={screen.planned}
      />
      <Bottles screen={screen} />
      {(screen.leftover || screen.passed.length > 0) && (
        <section aria-labelledby="besides">
          <h2 id="besides">Also on record</h2>
          {screen.leftover && <p>Left over {screen.leftover}</p>}
          {screen.passed.map(({ rule, reason }) => (
            <p key={`${rule} ${reason}`}>
              <PassedLine rule={rule} reason={reason} />
            </p>
          ))}
        </section>
      )}
      <p className={styles.links}>
        <a className="button" data-main="" href="/today">
          Today
        </a>
        <a className="button" href="/mix">
          Another mix
        </a>
      </p>
    </div>
  );
}

function Benches({ benches }: Pick<MixedScreen, 'benches'>) {
  return (
    <section aria-labelledby="benches">
      <h2 id="benches">Keep out</h2>
      <ul className={styles.benches}>
        {benches.map(({ id, name, state, until }) => (
          <li key={id} data-state={state}>
            <b>{name}</b>{' '}
            {state === 'closed' && (
              <>
                closed until <b className="unbroken">{until}</b>
              </>
            )}
            {state === 'open' && 'every recorded interval has elapsed'}
            {state === 'unknown' && 'keep out: an interval is not known'}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Bottles({ screen: { bottles, ways } }: { screen: MixedScreen }) {
  return (
    <section aria-labelledby="bottles">
      <h2 id="bottles">What remains</h2>
      <ul className={styles.bottles}>
        {bottles.map(({ label, href, left, leftText }) => (
          <li key={href}>
            <a href={href}>{label}</a>
            <span>{left ? <Figure of={left} ways={ways} /> : leftText} left</span>
          </li>
        ))}
      </ul>
      {bottles.length === 0 && <p>Nothing came from a bottle in the books.</p>}
    </section>
  );
}

export default doorPage('see-shop', MixedPage);
