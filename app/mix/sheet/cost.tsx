import type { Fig } from '@/lib/views/figures';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import type { SheetProps } from './sheet';
import styles from './sheet.module.css';

/** The cost ladder: each ingredient, their sum, a litre and a plant of it, and labour apart; beside it, all of it bought today. */
export function Cost({ screen: { cost, ways } }: SheetProps) {
  const { offers } = cost;
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">What it costs</h2>
      <table className={styles.ladder}>
        <thead>
          <tr>
            <td />
            <th scope="col" className="number">
              From the shelf
            </th>
            <th scope="col" className="number">
              Cheapest offers
            </th>
          </tr>
        </thead>
        <tbody>
          {cost.lines.map(({ product, cost: line, short, offer }) => (
            <Rung key={line.at} cost={line} offer={offer} ways={ways}>
              {product}
              {short && (
                <span className="soft">
                  , of it <Figure of={short} ways={ways} /> to buy
                </span>
              )}
            </Rung>
          ))}
          <Rung isSum cost={cost.material} offer={offers.material} ways={ways}>
            Products in the batch
          </Rung>
          <Rung cost={cost.perLitre} offer={offers.perLitre} ways={ways}>
            a litre
          </Rung>
          {cost.perPlant && (
            <Rung cost={cost.perPlant} offer={offers.perPlant} ways={ways}>
              a plant
            </Rung>
          )}
          <Rung cost={cost.labour} offer={null} ways={ways}>
            Labour, apart
          </Rung>
        </tbody>
      </table>
      <p className="soft">
        Cheapest offers: all of it bought today, per unit, without freight.{' '}
        <a className="unprinted" href="/buy/equivalents">
          Cheaper equivalents
        </a>
      </p>
    </section>
  );
}

type RungProps = { cost: Fig; offer: Fig | null; ways: Ways; isSum?: boolean; children: React.ReactNode };

const Rung = ({ cost, offer, ways, isSum, children }: RungProps) => (
  <tr className={isSum ? styles.sum : undefined}>
    <th scope="row">{children}</th>
    <td className="number">
      <Figure of={cost} ways={ways} />
    </td>
    <td className="number">{offer && <Figure of={offer} ways={ways} />}</td>
  </tr>
);
