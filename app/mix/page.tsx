import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type MixPlace, mixPlace } from '@/lib/views/mix';
import { BegunMixes } from '../_parts/begun-mixes';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { LeftOutList } from '../_parts/left-out-list';
import { PageLinks } from '../_parts/page-links';
import { one, type Search } from '../_parts/search';
import { UnderWayList } from '../_parts/under-way-list';
import { MissedList } from './missed-list';
import { MixChoice } from './mix-choice';
import { PlannedMixes } from './planned-mixes';
import { RecipeList } from './recipes/recipe-list';

export const metadata: Metadata = { title: 'Mix' };

async function MixPage({ searchParams }: { searchParams: Promise<Search> }) {
  const { page, missed } = await searchParams;
  const place = await mixPlace(clock, { page: one(page), missed: one(missed) });
  if (!place) return <FirstVisit />;
  const { recipes, allRecipes, form, ways } = place;
  return (
    <>
      <h1>Mix</h1>
      <p className="soft">Choose what to mix. Its sheet says how much of what goes in, in which order, and why.</p>
      <BegunMixes />
      <UnderWayList sprayings={place.underWay} />
      <Planned place={place} />
      <LeftOutList leftOut={place.leftOut} />
      {recipes.length > 0 && (
        <section aria-labelledby="other">
          <h2 id="other">Anything else, now</h2>
          <MixChoice form={form} button="Show the sheet" />
        </section>
      )}
      <section aria-labelledby="recipes">
        <h2 id="recipes">Recipes</h2>
        <RecipeList recipes={recipes} ways={ways} />
        {allRecipes > recipes.length && (
          <p>
            <a href="/mix/recipes">All {allRecipes} recipes</a>
          </p>
        )}
        <p className="apart">
          <a className="button" href="/mix/recipes/new">
            Write a new recipe
          </a>
        </p>
      </section>
    </>
  );
}

function Planned({ place: { missed, missedPages, due, coming, pages, ways } }: { place: MixPlace }) {
  return (
    <>
      {missed.length > 0 && (
        <section aria-labelledby="missed">
          <h2 id="missed">Missed, and nobody has said what became of it</h2>
          <MissedList missed={missed} />
          <PageLinks of={missedPages} label="Pages of what was missed" href={missedHref} />
        </section>
      )}
      <section aria-labelledby="due">
        <h2 id="due">Today</h2>
        {due.length === 0 ? (
          <EmptyPlace>Nothing is to be sprayed today.</EmptyPlace>
        ) : (
          <PlannedMixes planned={due} ways={ways} />
        )}
      </section>
      <section aria-labelledby="coming">
        <h2 id="coming">The next seven days</h2>
        {coming.length === 0 ? (
          <EmptyPlace>No program sprays in the next seven days.</EmptyPlace>
        ) : (
          <>
            <PlannedMixes planned={coming} ways={ways} />
            <PageLinks of={pages} label="Pages of what comes" href={comingHref} />
          </>
        )}
      </section>
    </>
  );
}

const missedHref = (page: string): string => `/mix${page === '' ? '' : `?missed=${page}`}#missed`;
const comingHref = (page: string): string => `/mix${page === '' ? '' : `?page=${page}`}#coming`;

export default doorPage('see-shop', MixPage);
