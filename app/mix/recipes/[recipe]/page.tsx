import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import { type RecipeScreen, recipeScreen } from '@/lib/views/recipe';
import { showMinutes } from '@/shared/measure/show';
import inLarge from '../../../_parts/answers.module.css';
import { Figure } from '../../../_parts/figure';
import { SeverityLines } from '../../../_parts/flag-lines';
import { FromSolution } from '../../../_parts/from-solution';
import styles from './recipe.module.css';
import { RecipeMix } from './recipe-mix';
import { RecipeTable } from './recipe-table';
import { RecipeVersions } from './recipe-versions';

type RecipeParams = { params: Promise<{ recipe: string }> };

export const generateMetadata = doorTitle('see-shop', async ({ params }: RecipeParams) => {
  const screen = await recipeScreen(clock, decodeURIComponent((await params).recipe));
  return screen?.name;
});

async function RecipePage({ params }: RecipeParams) {
  const screen = await recipeScreen(clock, decodeURIComponent((await params).recipe));
  const of = { list: 'recipes' as const, id: decodeURIComponent((await params).recipe) };
  if (!screen) return <UnreadOrMissing of={of} />;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/mix/recipes">Recipes</a>
      </p>
      <h1>{screen.name}</h1>
      <p className="soft">{usedText(screen)}</p>
      <div className={styles.flags}>
        <SeverityLines lines={screen.check.flags} />
      </div>
      <RecipeAnswers screen={screen} />
      <RecipeTable screen={screen} />
      {screen.solutions.length > 0 && (
        <section aria-labelledby="from-stock">
          <h2 id="from-stock">From a stock solution</h2>
          <p className="soft">As strong as it is, and easier to measure. It becomes a new version once it is saved.</p>
          <FromSolution offered={screen.solutions} named="product" />
        </section>
      )}
      <p className="apart">
        <a className="button" href={`/mix/recipes/${encodeURIComponent(screen.id)}/edit`}>
          Change this recipe
        </a>
      </p>
      <div className={styles.columns}>
        <RecipeMix screen={screen} />
        <RecipeVersions screen={screen} />
      </div>
    </>
  );
}

function usedText({ programs }: RecipeScreen): string {
  if (programs.length === 0) return 'No program uses it.';
  return `Sprayed on ${programs.map(({ benches }) => benches.join(', ')).join('; and on ')}.`;
}

function RecipeAnswers({ screen }: { screen: RecipeScreen }) {
  const { check, costPerLitre, ways, targetPh, useWithinMinutes } = screen;
  return (
    <dl className={inLarge.answers}>
      <div>
        <dt>A litre costs</dt>
        <dd>
          <Figure of={costPerLitre} ways={ways} />
        </dd>
      </div>
      <div>
        <dt>People keep out for</dt>
        <dd className={check.reiMinutes === null ? 'grave' : undefined}>
          {check.reiMinutes === null ? 'not known' : showMinutes(check.reiMinutes)}
        </dd>
      </div>
      <div>
        <dt>Target pH</dt>
        <dd>{targetPh ?? 'none set'}</dd>
      </div>
      <div>
        <dt>Use within</dt>
        <dd>{useWithinMinutes === null ? 'not known' : showMinutes(useWithinMinutes)}</dd>
      </div>
      <div>
        <dt>To wear</dt>
        <dd className={inLarge.words}>{check.equipment.join(', ') || 'nothing entered'}</dd>
      </div>
    </dl>
  );
}

export default doorPage('see-shop', RecipePage);
