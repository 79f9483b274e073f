import type { RecipeListed } from '@/lib/views/recipes';
import { showMinutes } from '@/shared/measure/show';
import { showDayShort } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import { EmptyPlace } from '../../_parts/empty-place';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './recipe-list.module.css';

/** Every recipe: what goes in, what a litre costs, who uses it, when it was last sprayed. */
export function RecipeList({ recipes, ways }: { recipes: RecipeListed[]; ways: Ways }) {
  if (recipes.length === 0) {
    return (
      <EmptyPlace>
        A recipe says what goes into the spray and how much of it, as the label or the grower says it. There is none
        yet.
      </EmptyPlace>
    );
  }
  return (
    <ul className={styles.recipes}>
      {recipes.map((recipe) => (
        <li key={recipe.id} className={styles.recipe}>
          <div>
            <p className={styles.name}>
              <a href={`/mix/recipes/${encodeURIComponent(recipe.id)}`}>{recipe.name}</a>
            </p>
            <p className="small">{recipe.lines.map(({ product, dose }) => `${product} ${dose}`).join(' · ')}</p>
          </div>
          <dl className={styles.facts}>
            <div>
              <dt>A litre</dt>
              <dd>
                <Figure of={recipe.costPerLitre} ways={ways} />
              </dd>
            </div>
            <div>
              <dt>Keep out</dt>
              <dd className={recipe.reiMinutes === null ? 'grave' : undefined}>
                {recipe.reiMinutes === null ? 'not known' : showMinutes(recipe.reiMinutes)}
              </dd>
            </div>
            <div>
              <dt>Last sprayed</dt>
              <dd>
                {recipe.lastSprayed === null ? 'never' : showDayShort(dayOf(ways.zone, recipe.lastSprayed), ways.today)}
              </dd>
            </div>
            <div className={styles.where}>
              <dt>Programs</dt>
              <dd>{programsText(recipe.programs)}</dd>
            </div>
          </dl>
        </li>
      ))}
    </ul>
  );
}

const programsText = (programs: RecipeListed['programs']): string =>
  programs.length === 0 ? 'no program uses it' : programs.map(({ benches }) => benches.join(', ')).join('; ');
