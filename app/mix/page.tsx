import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type MixScreen, mixScreen } from '@/lib/views/mix';
import { showDayShort } from '@/shared/time/show-day';
import { EmptyPlace } from '../_parts/empty-place';
import { Figure } from '../_parts/figure';
import { FirstVisit } from '../_parts/first-visit';
import styles from './mix.module.css';
import { RecipeList } from './recipes/recipe-list';

export const metadata: Metadata = { title: 'Mix' };

export default async function MixPage() {
  const screen = await mixScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <h1>Mix</h1>
      <p className="soft">What is to be mixed in the next seven days, and every recipe.</p>
      <section aria-labelledby="planned">
        <h2 id="planned">Planned</h2>
        <Planned screen={screen} />
      </section>
      <section aria-labelledby="recipes">
        <h2 id="recipes">Recipes</h2>
        <RecipeList recipes={screen.recipes} ways={screen.ways} />
        <p className="apart">
          <a className="button" href="/mix/recipes/new">
            Write a new recipe
          </a>
        </p>
      </section>
    </>
  );
}

function Planned({ screen: { planned, ways, today } }: { screen: MixScreen }) {
  if (planned.length === 0) return <EmptyPlace>No program sprays in the next seven days.</EmptyPlace>;
  return (
    <ul className={styles.planned}>
      {planned.map(({ program, date, recipe, benches, sprayMl, fills }) => (
        <li key={`${program} ${date}`}>
          <span className={styles.day}>{date === today ? 'Today' : showDayShort(date, today)}</span>
          <span>
            <a href={`/mix/recipes/${encodeURIComponent(recipe.id)}`}>{recipe.name}</a>
            <span className="soft"> on {benches.join(', ')}</span>
          </span>
          <span className={styles.spray}>
            <Figure of={sprayMl} ways={ways} />
            {fills && (
              <>
                {' '}
                in <Figure of={fills} ways={ways} />
              </>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}
