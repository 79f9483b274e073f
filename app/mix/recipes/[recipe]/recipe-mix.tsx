import type { RecipeScreen } from '@/lib/views/recipe';
import { Figure } from '../../../_parts/figure';
import styles from './recipe.module.css';

/** In which order it goes together, and how strong it comes out. */
export function RecipeMix({ screen: { check, strength, ways } }: { screen: RecipeScreen }) {
  return (
    <div>
      <section aria-labelledby="order">
        <h2 id="order">Order of addition</h2>
        <ol className={styles.order}>
          <li>
            <b>Water</b>
            <p className="soft small">Half to three quarters of it, before anything else.</p>
          </li>
          {check.order.map(({ line, name, why }) => (
            <li key={line}>
              <b>{name}</b>
              <p className="soft small">{why}</p>
            </li>
          ))}
        </ol>
      </section>
      <section aria-labelledby="strength">
        <h2 id="strength">Strength of the spray</h2>
        {strength.length === 0 && <p className="soft">Nothing is entered as the contents of these products.</p>}
        <dl className={styles.facts}>
          {check.strength.map(({ substance }, number) => (
            <div key={substance}>
              <dt>{substance}</dt>
              <dd>{strength[number] && <Figure of={strength[number]} ways={ways} />}</dd>
            </div>
          ))}
        </dl>
      </section>
    </div>
  );
}
