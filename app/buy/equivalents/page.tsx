import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type EquivalentsScreen, equivalentsScreen, type LineTo } from '@/lib/views/equivalents';
import { one, type Search } from '../../_parts/search';
import { BuyLinks } from '../buy-links';
import { CandidateList } from './candidate-list';
import { CurveAsked } from './curve-asked';
import styles from './equivalents.module.css';
import { StandIns } from './stand-ins';
import { SwitchForm } from './switch-form';

export const metadata: Metadata = { title: 'Cheaper equivalents' };

type EquivalentsPageProps = { searchParams: Promise<Search> };

export default async function EquivalentsPage({ searchParams }: EquivalentsPageProps) {
  const search = await searchParams;
  const [recipe, product] = [one(search.recipe), one(search.product)];
  const screen = recipe && product ? await equivalentsScreen(clock, { recipe, product, was: wasIn(search) }) : null;
  return (
    <>
      <h1>{screen ? `Instead of ${screen.product.name}` : 'Cheaper equivalents'}</h1>
      <BuyLinks here="/buy/equivalents" />
      {screen ? <Compared screen={screen} /> : <StandIns product={product} isLost={recipe !== undefined} />}
    </>
  );
}

/** What stood there before a switch, as the address tells it. */
function wasIn(search: Search): LineTo | undefined {
  const [product, dose] = [one(search.wasProduct), one(search.wasDose)];
  if (!product || !dose) return undefined;
  return { product, dose, use: one(search.wasUse) ?? '', order: one(search.wasOrder) ?? '' };
}

function Compared({ screen }: { screen: EquivalentsScreen }) {
  const { recipe, product, substance, dose, before, breakEven, candidates, ways, shopId } = screen;
  const mayBeCompared = candidates.filter(({ allowed }) => allowed).length > 1;
  return (
    <>
      <p>
        <a href={`/mix/recipes/${encodeURIComponent(recipe.id)}`}>{recipe.name}</a> takes {dose} of {product.name}.
        These bring as much {substance}.
      </p>
      {before && (
        <div role="status" className={styles.done}>
          <p>
            <b>{recipe.name}</b> takes {dose} of {product.name} from now on. It took {before.to.dose} of {before.name}.
          </p>
          <SwitchForm of={screen} to={before.to} commandId={before.commandId} isBack>
            Undo it
          </SwitchForm>
        </div>
      )}
      <CandidateList screen={screen} />
      <section aria-labelledby="turns">
        <h2 id="turns">What a season costs, by how much is sprayed</h2>
        {breakEven.length === 0 && (
          <p className="soft">The order stays as it is from a sixteenth of the planned use to sixteen times it.</p>
        )}
        {breakEven.map((words) => (
          <p key={words}>{words}</p>
        ))}
        {mayBeCompared && <CurveAsked shop={shopId} recipe={recipe.id} product={product.id} ways={ways} />}
      </section>
      <p className="apart soft">The label governs: read it before something else goes into the tank.</p>
    </>
  );
}
