import type { Fig } from '@/lib/views/figures';
import { Figure } from './figure';
import type { Ways } from './shown-text';

type DayCostProps = {
  cost: Fig;
  /** How many of the day's sprayings have a cost that is not known. */
  unknown: number;
  /** How many sprayings the day has. */
  of: number;
  ways: Ways;
};

/** What a day costs. A cost that is not known is never shown as nothing: what the sum leaves out is said beside it. */
export function DayCost({ cost, unknown, of, ways }: DayCostProps) {
  if (unknown === of) {
    return (
      <span className="grave">
        <Figure of={cost} ways={ways}>
          not known
        </Figure>
      </span>
    );
  }
  return (
    <span className={unknown > 0 ? 'grave' : undefined}>
      <Figure of={cost} ways={ways} />
    </span>
  );
}
