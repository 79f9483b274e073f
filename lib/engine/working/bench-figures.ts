import type { BenchState } from '../keepout/keep-out';
import { longestRei } from '../keepout/reopening';
import type { Application, Shop } from '../shop';
import { entered, type FoundWorking, type Step, text } from './shown';

/** The working of a bench's state: `ID/until`. */
export function benchWorking(_shop: Shop, benches: BenchState[], [id, figure]: string[]): FoundWorking | null {
  const standing = benches.find(({ bench }) => bench.id === id);
  if (!standing || figure !== 'until') return null;
  const { state, until, because } = standing;
  return {
    title: `${standing.bench.name}: who may stand there`,
    value:
      state === 'unknown'
        ? text('keep out, not known')
        : until === null
          ? text('every recorded interval has elapsed')
          : { kind: 'instant', instant: until },
    rule: 'Closed from the start of an application until its end + the longest restricted-entry interval in the mix, in elapsed hours; the latest of all applications counts. A missing end or interval keeps the bench closed. Counted from records; the label governs.',
    steps: because.flatMap(applicationSteps),
  };
}

function applicationSteps({ recipe, startedAt, endedAt }: Application): Step[] {
  const rei = longestRei(recipe);
  return [
    entered(`${recipe.name} began`, { kind: 'instant', instant: startedAt }, 'application record'),
    entered(
      'It ended',
      endedAt === null ? { kind: 'unknown', because: 'No end was noted.' } : { kind: 'instant', instant: endedAt },
      'application record',
    ),
    entered(
      'Longest interval in the mix',
      rei === null
        ? { kind: 'unknown', because: 'One product has no interval entered.' }
        : { kind: 'minutes', minutes: rei },
      `labels of ${recipe.ingredients.map(({ product }) => product.name).join(', ')}`,
    ),
  ];
}
