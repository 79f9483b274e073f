import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type BottleScreen, bottleScreen } from '@/lib/views/bottle';
import { bottleAt, lastingAddress } from '@/lib/views/bottle-address';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../../../_parts/figure';
import { daysLeftText } from '../../../days-left-text';
import type { About } from './bottle-form';
import styles from './bottle-page.module.css';
import { CountForm } from './count-form';
import { LedgerList } from './ledger-list';
import { LastDayForm, MoveForm, OpenForm, PaidForm, ShutForm } from './place-forms';
import { DiscardForm, DrawForm } from './stock-forms';

type BottleParams = { params: Promise<{ lot: string; place: string }> };

export const metadata: Metadata = { title: 'Bottle' };

async function BottlePage({ params }: BottleParams) {
  const { lot, place } = await params;
  const found = await bottleAt(decodeURIComponent(lot), decodeURIComponent(place));
  const of = { list: 'lots' as const, id: decodeURIComponent(lot) };
  if (!found) return <UnreadOrMissing of={of} />;
  if (found.moved) redirect(lastingAddress(found.spot));
  const screen = await bottleScreen(clock, found.spot);
  if (screen === 'again') redirect(lastingAddress(found.spot));
  if (!screen) return <UnreadOrMissing of={of} />;
  const { product, pack, lines, kept, ways, shopId, spot, formId } = screen;
  const about = { shopId, ...spot, formId };
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/shelf">Shelf</a> › <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>
      </p>
      <h1>
        {product.name}, {pack}
      </h1>
      <p className="soft">
        lot {spot.lotId}
        {screen.count > 1 && `, number ${screen.number} of ${screen.count}`} · {product.kind}
      </p>
      <div className={styles.columns}>
        <section aria-labelledby="level">
          <h2 id="level">What is in it</h2>
          <CountForm
            about={about}
            bottle={screen.seen}
            kept={kept}
            pack={pack}
            size={screen.size}
            told={screen.left}
            movements={screen.movements}
            units={ways.units}
          />
        </section>
        <div>
          <Facts screen={screen} />
          <section aria-labelledby="deeds">
            <h2 id="deeds">Something happened to it</h2>
            <Deeds screen={screen} about={about} />
          </section>
        </div>
      </div>
      <section aria-labelledby="ledger">
        <h2 id="ledger">Ledger</h2>
        <LedgerList lines={lines} about={about} form={kept.form} ways={ways} />
        <p className="apart">
          Added up, that leaves <Figure of={screen.figures.remaining} ways={ways} /> worth{' '}
          <Figure of={screen.figures.value} ways={ways} />. Each line carries its share of what was paid for the bottle,
          so that all of them and what is left come to the price. A line is never changed or removed: it is taken back
          by another one.
        </p>
      </section>
    </>
  );
}

/** What can be noted about a bottle, each in one step. */
function Deeds({ screen, about }: { screen: BottleScreen; about: About }) {
  const { openedOn, receivedOn, expiresOn, today, drawnFrom, keptIn, places, kept } = screen;
  const example = kept.form === 'liquid' ? '5 mL' : '5 g';
  return (
    <>
      <DrawForm about={about} example={example} />
      <OpenForm about={about} openedOn={openedOn} receivedOn={receivedOn} today={today} />
      <ShutForm about={about} openedOn={openedOn} drawnFrom={drawnFrom} />
      <DiscardForm about={about} example={example} />
      <MoveForm about={about} keptIn={keptIn} places={places} />
      <LastDayForm about={about} expiresOn={expiresOn} />
      <PaidForm about={about} isPaid={screen.isPaid} count={screen.count} currency={screen.ways.currency} />
    </>
  );
}

/** What a person asks of a bottle first. */
function Facts({ screen }: { screen: BottleScreen }) {
  const { figures, ways, daysLeft, keptIn, openedOn, receivedOn, expiresOn, today, spot } = screen;
  return (
    <>
      <dl className={styles.facts}>
        <div>
          <dt>left</dt>
          <dd>
            <Figure of={figures.remaining} ways={ways} />
          </dd>
        </div>
        <div>
          <dt>last usable day</dt>
          <dd className={daysLeft !== null && daysLeft < 0 ? 'grave' : undefined}>
            <Figure of={figures.lastUsableDay} ways={ways} />
            {daysLeft !== null && `, ${daysLeftText(daysLeft)}`}
          </dd>
        </div>
        <div>
          <dt>worth</dt>
          <dd>
            <Figure of={figures.value} ways={ways} />
          </dd>
        </div>
        <div>
          <dt>stands</dt>
          <dd>{keptIn ?? 'not known'}</dd>
        </div>
        <div>
          <dt>opened</dt>
          <dd>{openedOn === null ? 'not opened' : showDay(openedOn, today)}</dd>
        </div>
        <div>
          <dt>printed last day</dt>
          <dd>{expiresOn === null ? 'not known' : showDay(expiresOn, today)}</dd>
        </div>
        <div>
          <dt>{receivedOn > today ? 'arrives' : 'received'}</dt>
          <dd>{showDay(receivedOn, today)}</dd>
        </div>
      </dl>
      <p className={styles.print}>
        <a className="button" href={`/buy/equivalents?product=${encodeURIComponent(screen.product.id)}`}>
          Where it could stand in
        </a>
        <a className="button" href={`/shelf/labels?bottle=${encodeURIComponent(`${spot.lotId}/${spot.place + 1}`)}`}>
          Print its label
        </a>
      </p>
    </>
  );
}

export default doorPage('see-shop', BottlePage);
