import type { Due } from '@/lib/views/coming-in';
import type { Fig } from '@/lib/views/figures';
import { Figure } from './figure';
import type { Ways } from './shown-text';

/** When something that is on order is expected: late, today, or on a day that is still to come. */
export function DueWords({ due, expectedOn, ways }: { due: Due; expectedOn: Fig; ways: Ways }) {
  const day = <Figure of={expectedOn} ways={ways} />;
  switch (due) {
    case 'late':
      return (
        <>
          <b className="grave">▲ late since </b>
          {day}
        </>
      );
    case 'today':
      return (
        <b>
          expected today, <Figure of={expectedOn} ways={ways} />
        </b>
      );
    case 'ahead':
      return <>expected {day}</>;
    case 'unknown':
      return <>expected on a day {day}</>;
  }
}
