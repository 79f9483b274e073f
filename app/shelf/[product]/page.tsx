import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import type { Flag } from '@/lib/engine/rules/flag';
import type { Fig } from '@/lib/views/figures';
import { type ProductFlag, type ProductScreen, productScreen } from '@/lib/views/product';
import { showDay } from '@/shared/time/show-day';
import inLarge from '../../_parts/answers.module.css';
import { Bottle } from '../../_parts/bottle';
import { EmptyPlace } from '../../_parts/empty-place';
import { Figure } from '../../_parts/figure';
import { FlagLines } from '../../_parts/flag-lines';
import { weeksWords } from '../weeks-words';
import { ContainerTable } from './container-table';
import { EmptyBottles } from './empty-bottles';
import { LabelFacts } from './label-facts';
import { OfferTable } from './offer-table';
import { OffersFoot } from './offers-foot';
import { OnItsWay } from './on-its-way';
import styles from './product.module.css';
import { ProductTools } from './product-tools';
import { RampFold } from './ramp-fold';
import { RunOutLater } from './run-out-later';
import { SheetForm } from './sheet-form';
import { WeeksTable } from './weeks-table';

type ProductParams = { params: Promise<{ product: string }> };

export const generateMetadata = doorTitle('see-shop', async ({ params }: ProductParams) => {
  const screen = await productScreen(clock, decodeURIComponent((await params).product));
  return screen?.product.name;
});

async function ProductPage({ params }: ProductParams) {
  const screen = await productScreen(clock, decodeURIComponent((await params).product));
  const of = { list: 'products' as const, id: decodeURIComponent((await params).product) };
  if (!screen) return <UnreadOrMissing of={of} />;
  const { product, facts, weeks, ramp, steps, offers, flags, today, ways } = screen;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/shelf">Shelf</a>
      </p>
      <h1>{product.name}</h1>
      <p className="soft">
        {product.kind}, {facts.form}
        {facts.formulation && `, ${facts.formulation}`}
      </p>
      <div className={styles.flags}>
        <FlagLines flags={flags.map(inItsPlace)} />
      </div>
      <Answers screen={screen} />
      <ProductTools id={product.id} />
      <div className={styles.columns}>
        <section aria-labelledby="weeks">
          <h2 id="weeks">Week by week</h2>
          <RunOutLater ramp={ramp} units={ways.units} today={today} />
          <RampFold steps={steps} ways={ways} />
          <WeeksTable weeks={weeks} ways={ways} />
        </section>
        <div>
          <section aria-labelledby="containers">
            <h2 id="containers">Containers</h2>
            {product.bottles.length === 0 ? (
              <EmptyPlace>Nothing of it is on the shelf.</EmptyPlace>
            ) : (
              <>
                <div className={styles.shelf}>
                  {product.bottles.map((bottle) => (
                    <Bottle key={bottle.key} bottle={bottle.seen} />
                  ))}
                </div>
                <ContainerTable bottles={product.bottles} today={today} ways={ways} />
              </>
            )}
            <EmptyBottles product={product.id} />
          </section>
          <OnItsWay screen={screen} />
          <section aria-labelledby="offers">
            <h2 id="offers">Who sells it</h2>
            {offers.length === 0 ? (
              <EmptyPlace>No supplier offers it yet, so what is short has no price and no order-by day.</EmptyPlace>
            ) : (
              <OfferTable offers={offers} ways={ways} />
            )}
            <OffersFoot product={product.id} replace={screen.replace} ways={ways} />
          </section>
          <section aria-labelledby="label">
            <h2 id="label">What its label says</h2>
            <LabelFacts product={facts} modes={screen.modes} doubts={screen.doubts} units={ways.units} />
          </section>
          <SheetForm shop={screen.shopId} product={product.id} sheets={screen.sheets} />
        </div>
      </div>
      <p className="soft small">Counted from {showDay(today)}, 26 weeks ahead.</p>
    </>
  );
}

/** A flag away from its spraying says which one it speaks of. */
const inItsPlace = ({ flag, where, more }: ProductFlag): Flag => ({
  ...flag,
  message: `${where ? `${where}. ` : ''}${flag.message}${more > 0 ? ` ${more} more like it in the weeks ahead.` : ''}`,
});

/** The answers first: what is there, when it runs out, when to order, what will be wasted. */
function Answers({ screen: { product, ways } }: { screen: ProductScreen }) {
  const { onHand, usable, runsOutOn, orderBy, weeksUntilReorder, weeks, wasteCost, onOrder } = product;
  const answers: [name: string, figure: Fig, words?: string][] = [
    ['on hand', onHand],
    ['usable', usable],
    ...(onOrder ? ([['on order', onOrder.onOrder]] as [string, Fig][]) : []),
    ['runs out', runsOutOn],
    ['order by', orderBy],
    ['until reorder', weeksUntilReorder, weeksWords(weeks)],
    ['will be wasted', wasteCost],
  ];
  return (
    <dl className={inLarge.answers}>
      {answers.map(([name, figure, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Figure of={figure} ways={ways}>
              {words}
            </Figure>
          </dd>
        </div>
      ))}
    </dl>
  );
}

export default doorPage('see-shop', ProductPage);
