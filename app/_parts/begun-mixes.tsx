'use client';

import type { MixProgress } from '@/shared/mix/mix-progress';
import { whereAt } from '@/shared/mix/where-at';
import { instantOf } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import { useKeptMixes } from './kept-mixes';
import { mixPlace } from './mix-place';

/** The mixes that were begun on this device and are not on record yet, with the way back into each. */
export function BegunMixes() {
  const begun = (useKeptMixes() ?? []).filter(({ state }) => state !== 'sent');
  if (begun.length === 0) return null;
  return (
    <section aria-labelledby="begun-here">
      <h2 id="begun-here">Begun on this device</h2>
      <ul>
        {begun.map((mix) => (
          <li key={mix.commandId}>
            <a className="button" href={mixPlace(mix)}>
              {mix.plan.recipe.name}
            </a>{' '}
            {saidOf(mix)}
          </li>
        ))}
      </ul>
    </section>
  );
}

const saidOf = (mix: MixProgress): string =>
  mix.state === 'to-send'
    ? 'finished, and not sent yet'
    : `${whereAt(mix)}, begun ${showClock(instantOf(mix.begunAt), mix.plan.zone)}`;
