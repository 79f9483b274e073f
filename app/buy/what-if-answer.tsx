import type { OrderWhen, ProductSaid, SumOtherwise, WhatIfSaid } from '@/lib/views/what-if';
import { Figure } from '../_parts/figure';
import { FlagLines } from '../_parts/flag-lines';
import { shownText, type Ways } from '../_parts/shown-text';
import { weeksWords } from '../shelf/weeks-words';
import styles from './what-if.module.css';

type AnswerProps = { said: WhatIfSaid | null; isAway: boolean; ways: Ways };

/**
 * What changes: in a sentence that stays in sight while a slider moves, then figure by figure. While the next answer is
 * on its way the last one stays, so that nothing jumps.
 */
export function WhatIfAnswer({ said, isAway, ways }: AnswerProps) {
  return (
    <>
      <div role="status" className={said ? styles.digest : styles.hint}>
        {isAway && <p className="grave">The shop does not answer. What you typed is kept here.</p>}
        {said?.faults.map(({ path, message }) => (
          <p key={path} className="grave">
            {message}
          </p>
        ))}
        {!said && <p className="soft">Move something: what it changes stands here. Nothing is saved.</p>}
        {said?.isSupposed && <Digest said={said} ways={ways} />}
        {said && said.stops.length > 0 && (
          <p className="grave">
            {said.stops.length === 1 ? 'One stop comes' : `${said.stops.length} stops come`} with it. The label governs.
          </p>
        )}
      </div>
      {said && <FlagLines flags={said.stops} />}
      {said && said.sums.length + said.products.length > 0 && <Changes said={said} ways={ways} />}
    </>
  );
}

function Digest({ said: { sums, products, sooner, later, weeks }, ways }: { said: WhatIfSaid; ways: Ways }) {
  if (sums.length + products.length === 0) {
    return <p>Nothing changes: costs, waste and order days stay as they are planned.</p>;
  }
  const [first] = sums;
  return (
    <p>
      {first && (
        <>
          {first.what}, {weeks} weeks: <Figure of={first.more} ways={ways} />.{' '}
        </>
      )}
      {sooner + later === 0 && 'Order days stay as they are planned.'}
      {sooner > 0 && <b>{sooner === 1 ? 'One product' : `${sooner} products`} to order sooner. </b>}
      {later > 0 && `${later === 1 ? 'One product' : `${later} products`} to order later, or not at all.`}
    </p>
  );
}

/** Each figure that changes, as it is planned and as it would be; every one of them opens. */
function Changes({ said: { sums, products, weeks }, ways }: { said: WhatIfSaid; ways: Ways }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="What changes">
      <table className={styles.changes}>
        <thead>
          <tr>
            <th scope="col">In {weeks} weeks</th>
            <th scope="col">As planned</th>
            <th scope="col">If so</th>
          </tr>
        </thead>
        <tbody>
          {sums.map((sum) => (
            <SumRow key={sum.what} of={sum} ways={ways} />
          ))}
        </tbody>
        {products.map((one) => (
          <ProductRows key={one.product.id} of={one} ways={ways} />
        ))}
      </table>
    </section>
  );
}

function SumRow({ of: { what, from, to, more }, ways }: { of: SumOtherwise; ways: Ways }) {
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>
        <Figure of={from} ways={ways} />
      </td>
      <td>
        <Figure of={to} ways={ways} />
        <small>
          <Figure of={more} ways={ways} />
        </small>
      </td>
    </tr>
  );
}

function ProductRows({ of: { product, from, to }, ways }: { of: ProductSaid; ways: Ways }) {
  const isLate = to.weeks !== null && to.weeks < 0;
  // That it is late is said in words, also where it is as many weeks as before.
  const isSaid = (figure: When) =>
    (isLate && figure === 'weeksUntilReorder') || textOf(from, figure, ways) !== textOf(to, figure, ways);
  const lines = LINES.filter(({ figure }) => isSaid(figure));
  return (
    <tbody>
      <tr className={styles.product}>
        <th scope="rowgroup" colSpan={3}>
          {product.name}
        </th>
      </tr>
      {lines.map(({ figure, name }) => (
        <tr key={figure}>
          <th scope="row">{name}</th>
          <td>
            <When of={from} figure={figure} ways={ways} />
          </td>
          <td className={isLate && figure !== 'runsOutOn' ? styles.late : undefined}>
            <When of={to} figure={figure} ways={ways} />
          </td>
        </tr>
      ))}
    </tbody>
  );
}

type When = 'weeksUntilReorder' | 'orderBy' | 'runsOutOn';

const LINES: { figure: When; name: string }[] = [
  { figure: 'weeksUntilReorder', name: 'until reorder' },
  { figure: 'orderBy', name: 'order by' },
  { figure: 'runsOutOn', name: 'runs out' },
];

const textOf = (of: OrderWhen, figure: When, ways: Ways): string => shownText(of[figure].value, ways);

function When({ of, figure, ways }: { of: OrderWhen; figure: When; ways: Ways }) {
  return (
    <Figure of={of[figure]} ways={ways}>
      {figure === 'weeksUntilReorder' ? weeksWords(of.weeks) : undefined}
    </Figure>
  );
}
