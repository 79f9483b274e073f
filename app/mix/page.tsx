import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type MixPlace, mixPlace } from '@/lib/views/mix';
import { BegunMixes } from '../_parts/begun-mixes';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { UnderWayList } from '../_parts/under-way-list';
import { MissedList } from './missed-list';
import { MixChoice } from './mix-choice';
import { PlannedMixes } from './planned-mixes';
import { RecipeList } from './recipes/recipe-list';

export const metadata: Metadata = { title: 'Mix' };

export default async function MixPage() {
  const place = await mixPlace(clock);
  if (!place) return <FirstVisit />;
  const { recipes, form, ways } = place;
  return (
    <>
      <h1>Mix</h1>
      <p className="soft">Choose what to mix. Its sheet says how much of what goes in, in which order, and why.</p>
      <BegunMixes />
      <UnderWayList sprayings={place.underWay} />
      <Planned place={place} />
      {recipes.length > 0 && (
        <section aria-labelledby="other">
          <h2 id="other">Anything else, now</h2>
          <MixChoice form={form} button="Show the sheet" />
        </section>
      )}
      <section aria-labelledby="recipes">
        <h2 id="recipes">Recipes</h2>
        <RecipeList recipes={recipes} ways={ways} />
        <p className="apart">
          <a className="button" href="/mix/recipes/new">
            Write a new recipe
          </a>
        </p>
      </section>
    </>
  );
}

function Planned({ place: { missed, due, coming, ways } }: { place: MixPlace }) {
  return (
    <>
      {missed.length > 0 && (
        <section aria-labelledby="missed">
          <h2 id="missed">Missed, and nobody has said what became of it</h2>
          <MissedList missed={missed} />
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
          <PlannedMixes planned={coming} ways={ways} />
        )}
      </section>
    </>
  );
}
