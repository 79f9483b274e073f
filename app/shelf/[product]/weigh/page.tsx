import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import { weighScreen } from '@/lib/views/measuring';
import { showNumber } from '@/shared/measure/show';
import { Figure } from '../../../_parts/figure';
import styles from '../../measuring/measuring.module.css';
import { WeighForm } from '../../measuring/weigh-form';

type ProductParams = { params: Promise<{ product: string }> };

export const generateMetadata = doorTitle('spray', async ({ params }: ProductParams) => {
  const screen = await weighScreen(clock, decodeURIComponent((await params).product));
  return screen && `Weigh ${screen.name}`;
});

async function WeighPage({ params }: ProductParams) {
  const { product } = await params;
  const screen = await weighScreen(clock, decodeURIComponent(product));
  if (!screen) notFound();
  const { thing, name, gramsPerTeaspoon, sprays, ways } = screen;
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a> / <a href={`/shelf/${product}`}>{name}</a>
      </p>
      <h1>Weigh a teaspoon of {name}</h1>
      <p className={gramsPerTeaspoon === null ? 'grave' : 'soft'}>
        {gramsPerTeaspoon === null
          ? 'A level teaspoon of it has not been weighed yet.'
          : `A level teaspoon of it counts as ${showNumber(gramsPerTeaspoon)} g.`}
      </p>
      <ol className={styles.steps}>
        <li>Gloves on, and what else its label says to wear. Out of the wind.</li>
        <li>Fill the spoon without pressing, and strike it level with a straight edge.</li>
        <li>Put it on the scale, write what it shows, and take at least three.</li>
      </ol>
      <WeighForm thing={thing} />
      <section aria-labelledby="sprays">
        <h2 id="sprays">What rests on it</h2>
        {sprays.length === 0 ? (
          <p className="soft">No spraying is planned with it, so no cost waits for this.</p>
        ) : (
          <ul className={styles.changes}>
            {sprays.map(({ recipe, dose, costPerLitre }) => (
              <li key={recipe}>
                <span>
                  <b>{recipe}</b>, {dose}
                </span>
                <span>
                  a litre costs <Figure of={costPerLitre} ways={ways} />
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </>
  );
}

export default doorPage('spray', WeighPage);
