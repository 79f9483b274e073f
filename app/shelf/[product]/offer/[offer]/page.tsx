import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import { type OfferScreen, offerScreen } from '@/lib/views/offer';
import { fieldsOfOffer } from '@/shared/forms/offer';
import { showMoney } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../../../_parts/figure';
import { PutAway } from '../../../put-away';
import styles from '../offer.module.css';
import { OfferForm } from '../offer-form';
import { PriceLater } from '../price-later';
import { PriceTable } from '../price-table';

type OfferParams = { params: Promise<{ product: string; offer: string }> };

async function screenOf({ params }: OfferParams): Promise<OfferScreen | null> {
  const { product, offer } = await params;
  return offerScreen(clock, decodeURIComponent(product), decodeURIComponent(offer));
}

export const generateMetadata = doorTitle('grow', async (props: OfferParams) => {
  const screen = await screenOf(props);
  return screen?.offer && `${screen.product.name}, ${screen.offer.file.pack}`;
});

async function OfferPage(props: OfferParams) {
  const screen = await screenOf(props);
  const of = { list: 'offers' as const, id: decodeURIComponent((await props.params).offer) };
  if (!screen?.offer) return <UnreadOrMissing of={of} />;
  const { product, shopId, taken, suppliers, offer, ways } = screen;
  const { file, shown, expecting } = offer;
  const { supplier } = shown.offer;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href={`/shelf/${encodeURIComponent(product.id)}#offers`}>{product.name}</a>
      </p>
      <h1>
        {file.pack} from {supplier.name}
      </h1>
      {shown.offer.archived && <p className="grave">Put away: it counts in no price.</p>}
      <p className={styles.now}>{holdsText(screen)}</p>
      <p className="soft">
        A {shown.unit} <Figure of={shown.unitPrice} ways={ways} />
        {shown.isCheapest && ', the cheapest of all that can be bought of it'} ·{' '}
        <a href={`/shelf/suppliers/${encodeURIComponent(supplier.id)}`}>{supplier.name}</a>
      </p>
      <div className={styles.columns}>
        <History screen={screen} offer={offer} />
        <section aria-labelledby="change">
          <h2 id="change">Change it</h2>
          <OfferForm
            {...{ shop: shopId, id: file.id, expecting, taken, suppliers, form: product.form }}
            holds={`${showMoney(shown.offer.price, ways.currency)} holds ${sinceText(screen)}.`}
            currency={ways.currency}
            fields={fieldsOfOffer(file, product.id)}
          />
          <PutAway
            {...{ shop: shopId, what: 'offer', id: file.id, expecting, archived: file.archived, removable: false }}
          />
        </section>
      </div>
    </>
  );
}

function History({ screen, offer }: { screen: OfferScreen; offer: NonNullable<OfferScreen['offer']> }) {
  const { ways, today, unit } = screen;
  const isAlone = offer.steps.points.length < 2;
  return (
    <section aria-labelledby="prices">
      <h2 id="prices">What it cost</h2>
      {!isAlone && <PriceLater steps={offer.steps} currency={ways.currency} unit={unit} today={today} />}
      <PriceTable history={offer.history} unit={unit} ways={ways} />
    </section>
  );
}

/** "This price holds since Tue 3 March: $9.40 a pack. Before: $8.90." */
function holdsText(screen: OfferScreen): string {
  const { offer, ways } = screen;
  if (!offer) return '';
  const { price } = offer.shown.offer;
  const { before } = offer.shown;
  const now = `${showMoney(price, ways.currency)} a pack, ${sinceText(screen)}.`;
  if (!before) return now;
  const than = before.price === price ? '' : before.price > price ? ', so it is cheaper now' : ', so it is dearer now';
  return `${now} Before: ${showMoney(before.price, ways.currency)}${than}.`;
}

function sinceText({ offer, today }: OfferScreen): string {
  const since = offer?.shown.offer.since ?? null;
  return since === null ? 'since when nobody noted' : `since ${showDay(since, today)}`;
}

export default doorPage('grow', OfferPage);
