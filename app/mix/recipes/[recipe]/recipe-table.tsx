import type { RecipeLineShown, RecipeScreen } from '@/lib/views/recipe';
import { Figure } from '../../../_parts/figure';
import { LabelSaid } from '../line-reading';
import styles from './recipe.module.css';

/** What goes in: the dose as typed, what that is a litre, a gallon and a fill, what it costs, and what the label says. */
export function RecipeTable({ screen: { id, lines, ways, fill } }: { screen: RecipeScreen }) {
  return (
    <section aria-labelledby="goes-in">
      <h2 id="goes-in">What goes in</h2>
      <ul className={styles.lines}>
        {lines.map((line, number) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the recipe.
          <li key={number}>
            <p className={styles.line}>
              <a href={`/shelf/${encodeURIComponent(line.product.id)}`}>{line.product.name}</a> <b>{line.dose}</b>
            </p>
            <dl className={styles.amounts}>
              {FIGURES.map(([figure, title]) => (
                <div key={figure}>
                  <dt>{figure === 'perFill' ? `${title} of ${fill}` : title}</dt>
                  <dd>
                    <Figure of={line[figure]} ways={ways} />
                  </dd>
                </div>
              ))}
            </dl>
            <div className={styles.label}>
              <LabelSaid label={line.label} />
              <a
                className={styles.instead}
                href={`/buy/equivalents?${new URLSearchParams({ recipe: id, product: line.product.id })}`}
              >
                What could stand here instead of {line.product.name}
              </a>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

const FIGURES = [
  ['perLitre', 'A litre'],
  ['perGallon', 'A gallon'],
  ['perFill', 'A fill'],
  ['cost', 'Cost a litre'],
] as const satisfies [keyof RecipeLineShown, string][];
