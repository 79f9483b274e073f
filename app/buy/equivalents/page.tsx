import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type EquivalentsScreen, equivalentsScreen } from '@/lib/views/equivalents';
import { type SeasonCurve, seasonCurve } from '@/lib/views/season-curve';
import type { LineTo } from '@/lib/views/switch-ahead';
import { AssumedList } from '../../_parts/assumed-list';
import { Figure } from '../../_parts/figure';
import { one, type Search } from '../../_parts/search';
import { BuyLinks } from '../buy-links';
import { CandidateList } from './candidate-list';
import { CurveAsked } from './curve-asked';
import { CurveShown } from './curve-shown';
import styles from './equivalents.module.css';
import { StandIns } from './stand-ins';
import { SwitchForm } from './switch-form';

export const metadata: Metadata = { title: 'Cheaper equivalents' };

type EquivalentsPageProps = { searchParams: Promise<Search> };

async function EquivalentsPage({ searchParams }: EquivalentsPageProps) {
  const search = await searchParams;
  const [recipe, product] = [one(search.recipe), one(search.product)];
  const screen = recipe && product ? await equivalentsScreen(clock, { recipe, product, was: wasIn(search) }) : null;
  const curve = screen && one(search.curve) === 'yes' ? await curveIn(screen) : null;
  return (
    <>
      <h1>{screen ? `Instead of ${screen.product.name}` : 'Cheaper equivalents'}</h1>
      <BuyLinks here="/buy/equivalents" />
      {screen ? (
        <Compared screen={screen} curve={curve} />
      ) : (
        <StandIns product={product} isLost={recipe !== undefined} />
      )}
    </>
  );
}

/** What stood there before a switch, as the address tells it. */
function wasIn(search: Search): LineTo | undefined {
  const [product, dose] = [one(search.wasProduct), one(search.wasDose)];
  if (!product || !dose) return undefined;
  return { product, dose, use: one(search.wasUse) ?? '', order: one(search.wasOrder) ?? '' };
}

/** The curve with the page, for whoever has asked for it without a script. */
async function curveIn({ shopId: shop, recipe, product }: EquivalentsScreen): Promise<SeasonCurve | null> {
  const outcome = await seasonCurve({ shop, recipe: recipe.id, product: product.id }, clock);
  return outcome.ok ? outcome.value : null;
}

type ComparedProps = { screen: EquivalentsScreen; curve: SeasonCurve | null };

function Compared({ screen, curve }: ComparedProps) {
  const { recipe, product, substance, dose, before } = screen;
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
      <AssumedList of={screen.assumed} />
      <Turns screen={screen} curve={curve} />
      <p className="apart soft">The label governs: read it before something else goes into the tank.</p>
    </>
  );
}

/** From which use of a season on, or below which, another product is the cheaper one, and the season's cost by its use. */
function Turns({ screen, curve }: ComparedProps) {
  const { recipe, product, candidates, ways, shopId, sprayed, turns, isWhole } = screen;
  const best = candidates.find(({ isBest }) => isBest);
  const mayBeCompared = candidates.filter(({ season }) => season.value.kind === 'money').length > 1;
  return (
    <section aria-labelledby="turns">
      <h2 id="turns">What a season costs, by how much is sprayed</h2>
      <p>
        Planned: <Figure of={sprayed} ways={ways} /> of spray in the 52 weeks ahead
        {best && mayBeCompared && `, for which ${best.name} is the cheapest`}.
      </p>
      {turns.map(({ at, isAbove, cheaper, than }) => (
        <p key={at.at}>
          {isAbove ? 'From ' : 'Below '}
          <Figure of={at} ways={ways} /> {isAbove ? 'on' : ''} {cheaper} is cheaper than {than}.
        </p>
      ))}
      {mayBeCompared && turns.length === 0 && isWhole && (
        <p className="soft">The order stays as it is from a sixteenth of the planned use to sixteen times it.</p>
      )}
      {!isWhole && <p className="soft">There was no time to look at every use: the order may turn at others, too.</p>}
      {mayBeCompared && curve && <CurveShown curve={curve} ways={ways} />}
      {mayBeCompared && !curve && <CurveAsked shop={shopId} recipe={recipe.id} product={product.id} ways={ways} />}
    </section>
  );
}

export default doorPage('grow', EquivalentsPage);
