import { Figure } from '../../_parts/figure';
import type { SheetProps } from './sheet';
import styles from './sheet.module.css';

/** The cost ladder: each ingredient, their sum, a litre and a plant of it, and labour apart. */
export function Cost({ screen: { cost, ways } }: SheetProps) {
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">What it costs</h2>
      <dl className={styles.ladder}>
        {cost.lines.map(({ product, cost: line, short }) => (
          <div key={line.at}>
            <dt>
              {product}
              {short && (
                <span className="soft">
                  , of it <Figure of={short} ways={ways} /> to buy at the cheapest offer
                </span>
              )}
            </dt>
            <dd>
              <Figure of={line} ways={ways} />
            </dd>
          </div>
        ))}
        <div className={styles.sum}>
          <dt>Products in the batch</dt>
          <dd>
            <Figure of={cost.material} ways={ways} />
          </dd>
        </div>
        <div>
          <dt>a litre</dt>
          <dd>
            <Figure of={cost.perLitre} ways={ways} />
          </dd>
        </div>
        {cost.perPlant && (
          <div>
            <dt>a plant</dt>
            <dd>
              <Figure of={cost.perPlant} ways={ways} />
            </dd>
          </div>
        )}
        <div>
          <dt>Labour, apart</dt>
          <dd>
            <Figure of={cost.labour} ways={ways} />
          </dd>
        </div>
      </dl>
    </section>
  );
}
