import type { RecipeLineShown, RecipeScreen } from '@/lib/views/recipe';
import { Figure } from '../../../_parts/figure';
import { LabelSaid } from '../line-reading';
import styles from './recipe.module.css';

/** What goes in: the dose as typed, what that is a litre, a gallon and a fill, what it costs, and what the label says. */
export function RecipeTable({ screen: { lines, ways, fill } }: { screen: RecipeScreen }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="What goes in, as a table">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Product</th>
            <th scope="col">Dose</th>
            <th scope="col" className="number">
              A litre
            </th>
            <th scope="col" className="number">
              A gallon
            </th>
            <th scope="col" className="number">
              A fill of {fill}
            </th>
            <th scope="col" className="number">
              Cost a litre
            </th>
          </tr>
        </thead>
        {lines.map((line, number) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the recipe.
          <tbody key={number}>
            <tr>
              <th scope="row">
                <a href={`/shelf/${encodeURIComponent(line.product.id)}`}>{line.product.name}</a>
              </th>
              <td>{line.dose}</td>
              {FIGURES.map((figure) => (
                <td key={figure} className="number">
                  <Figure of={line[figure]} ways={ways} />
                </td>
              ))}
            </tr>
            <tr className={styles.label}>
              <td colSpan={6}>
                <LabelSaid label={line.label} />
              </td>
            </tr>
          </tbody>
        ))}
      </table>
    </section>
  );
}

const FIGURES = ['perLitre', 'perGallon', 'perFill', 'cost'] as const satisfies (keyof RecipeLineShown)[];
