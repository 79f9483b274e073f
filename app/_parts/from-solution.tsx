import type { SolutionOffered } from '@/lib/views/solutions';
import styles from './from-solution.module.css';

/** Lines of recipes that can take a stock solution instead, each with the one step that does it. */
export function FromSolution({ offered, named }: { offered: SolutionOffered[]; named: 'recipe' | 'product' }) {
  return (
    <ul className={styles.offered}>
      {offered.map(({ recipe, line, product, dose, solution }) => (
        <li key={`${recipe.id} ${line} ${solution.id}`}>
          <span>
            {named === 'recipe' ? `${recipe.name}: ` : ''}
            <b>{solution.dose}</b> of {solution.name} instead of {dose} of {product.name}
            {!solution.isOnShelf && <span className="soft">; none is on the shelf now</span>}
          </span>
          <a className="button" href={replaceHref(recipe.id, line, solution.id)}>
            Write it in
            <span className="spoken">
              : {solution.name} in {recipe.name}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}

/** The form of a recipe with one line poured from a stock solution. Lines count from 1 where people read them. */
const replaceHref = (recipe: string, line: number, from: string): string =>
  `/mix/recipes/${encodeURIComponent(recipe)}/edit?${new URLSearchParams({ line: String(line + 1), from })}`;
