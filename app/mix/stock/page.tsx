import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type StockSolutionScreen, stockSolutionScreen } from '@/lib/views/stock-solution';
import { EmptyPlace } from '../../_parts/empty-place';
import { FromSolution } from '../../_parts/from-solution';
import { one, type Search } from '../../_parts/search';
import styles from './stock.module.css';
import { StockForm } from './stock-form';

export const metadata: Metadata = { title: 'Make a stock solution' };

async function StockSolutionPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const [product = '', amount = '', make = ''] = [one(search.product), one(search.amount), one(search.make)];
  const screen = await stockSolutionScreen(clock, { product, amount, make });
  if (!screen) notFound();
  const { name, form, id } = screen.product;
  return (
    <>
      <p>
        <a href={`/shelf/${encodeURIComponent(id)}`}>{name}</a>
      </p>
      <h1>Make a stock solution</h1>
      <p className="soft">
        {form === 'powder' ? 'The powder, dissolved' : 'The liquid, thinned'} in water beforehand, so that what one mix
        takes of it can be measured. It becomes a bottle of its own, with its own strength, cost and last day. Wear what
        the label of {name} asks for.
      </p>
      {screen.bottles.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf/receive', text: 'Receive some' }}>There is no bottle of {name}.</EmptyPlace>
      ) : (
        <StockForm screen={screen} />
      )}
      <Instead screen={screen} />
    </>
  );
}

/** What to write in recipes afterwards. It is left to the owner, because a recipe says what is meant to go in. */
function Instead({ screen: { instead, made, product, strength } }: { screen: StockSolutionScreen }) {
  if (instead.length + made.length === 0) return null;
  return (
    <section aria-labelledby="instead">
      <h2 id="instead">In recipes, instead of {product.name}</h2>
      <p>A recipe goes on taking {product.name} itself until it is changed.</p>
      {made.length > 0 && <FromSolution offered={made} named="recipe" />}
      {instead.length > 0 && (
        <>
          <p className="apart">At {strength}, once it is made, this brings as much:</p>
          <ul className={styles.instead}>
            {instead.map(({ recipe, dose, solution }) => (
              <li key={`${recipe.id} ${dose}`}>
                <a className="button" href={`/mix/recipes/${encodeURIComponent(recipe.id)}`}>
                  {recipe.name}
                </a>
                <span>
                  <b>{solution}</b> of the solution instead of {dose}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

export default doorPage('spray', StockSolutionPage);
