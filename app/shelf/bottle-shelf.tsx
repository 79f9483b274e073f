import type { ShelfBottle } from '@/lib/views/shelf-bottles';
import type { ShelfProduct } from '@/lib/views/shelf-product';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { Bottle } from '../_parts/bottle';
import { Figure } from '../_parts/figure';
import { NeedUnknown } from '../_parts/need-unknown';
import { OnOrder } from '../_parts/on-order';
import type { Ways } from '../_parts/shown-text';
import styles from './bottle-shelf.module.css';
import { daysLeftText } from './days-left-text';
import { weeksWords } from './weeks-words';

type BottleShelfProps = { products: ShelfProduct[]; today: Day; ways: Ways };

/** The shelf as it stands: every container drawn to scale on its board, and on the rail under it what it is. */
export function BottleShelf({ products, today, ways }: BottleShelfProps) {
  return (
    <ul className={styles.shelf}>
      {products.map((product) => (
        <li key={product.id} className={styles.product}>
          {/* The words beside them lead to the same pages, so the pictures are for those who point. */}
          <div className={styles.row} aria-hidden={product.bottles.length > 0}>
            {product.bottles.map(({ key, href, seen }) => (
              <a key={key} className={styles.picture} href={href} tabIndex={-1}>
                <Bottle bottle={seen} />
              </a>
            ))}
            {product.bottles.length === 0 && <p className={styles.gap}>none left</p>}
          </div>
          <Rail product={product} today={today} ways={ways} />
        </li>
      ))}
    </ul>
  );
}

type RailProps = { product: ShelfProduct; today: Day; ways: Ways };

function Rail({ product, today, ways }: RailProps) {
  const { id, name, kind, archived, bottles } = product;
  const place = placeOfAll(bottles);
  return (
    <div className={styles.rail}>
      <h2 className={styles.name}>
        <a href={`/shelf/${encodeURIComponent(id)}`}>{name}</a>
      </h2>
      <p>
        {archived ? `${kind}, put away` : kind} · <Figure of={product.onHand} ways={ways} />
        {product.someDead && (
          <>
            , usable <Figure of={product.usable} ways={ways} />
          </>
        )}
        {place && ` · ${place}`}
      </p>
      <ReorderLine product={product} ways={ways} />
      {product.onOrder && (
        <p>
          <OnOrder of={product.onOrder} ways={ways} />
        </p>
      )}
      <ul className={styles.bottles}>
        {bottles.map((bottle) => (
          <BottleLine key={bottle.key} bottle={bottle} of={name} sayPlace={!place} today={today} ways={ways} />
        ))}
      </ul>
      {product.wastes && (
        <p className={styles.waste}>
          <Figure of={product.wasteCost} ways={ways} /> of it will be wasted
        </p>
      )}
    </div>
  );
}

/** The place that all of them stand in; null when they stand in several, or nobody noted it of one. */
function placeOfAll(bottles: ShelfBottle[]): string | null {
  const [first] = bottles;
  return first && bottles.every(({ keptIn }) => keptIn === first.keptIn) ? first.keptIn : null;
}

function ReorderLine({ product, ways }: { product: ShelfProduct; ways: Ways }) {
  const { weeks, weeksUntilReorder, orderBy, runsOut, runsOutOn, toEnter } = product;
  if (!runsOut && toEnter.length > 0) return <NeedUnknown toEnter={toEnter} />;
  if (!runsOut) {
    return (
      <p className="soft">
        runs out <Figure of={runsOutOn} ways={ways} />
      </p>
    );
  }
  if (weeks === null) {
    return (
      <p className="grave">
        runs out <Figure of={runsOutOn} ways={ways} />, and no offer with a lead time
      </p>
    );
  }
  return (
    <p className={weeks <= 0 ? 'grave' : undefined}>
      <b>
        <Figure of={weeksUntilReorder} ways={ways}>
          reorder {weeks > 0 && 'in '}
          {weeksWords(weeks)}
        </Figure>
      </b>{' '}
      · order by <Figure of={orderBy} ways={ways} />
    </p>
  );
}

/** Half a year: past that, the day says enough. */
const SOON = 182;

type BottleLineProps = { bottle: ShelfBottle; of: string; sayPlace: boolean; today: Day; ways: Ways };

function BottleLine({ bottle, of, sayPlace, today, ways }: BottleLineProps) {
  const { href, number, remaining, lastUsableDay, value, pack, lotId, daysLeft, coming, receivedOn, openedOn, keptIn } =
    bottle;
  return (
    <li className={styles.bottle}>
      <span>
        <Figure of={remaining} ways={ways} /> of{' '}
        <a className={styles.to} href={href}>
          {pack}
          {openedOn && ', opened'}
          <span className="spoken">
            {' '}
            of {of}, lot {lotId}, number {number}
          </span>
        </a>{' '}
        · <span className={styles.worth}>worth </span>
        <Figure of={value} ways={ways} />
        {coming && `, arrives ${showDayShort(receivedOn, today)}`}
        {sayPlace && keptIn && ` · ${keptIn}`}
      </span>
      <span className={daysLeft !== null && daysLeft < 0 ? 'grave' : 'soft'}>
        last day <Figure of={lastUsableDay} ways={ways} />
        {daysLeft !== null && daysLeft <= SOON && `, ${daysLeftText(daysLeft)}`}
      </span>
    </li>
  );
}
