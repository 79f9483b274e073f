import type { RampEvent, RampStep, RampSteps } from '@/lib/views/ramp-steps';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../../_parts/column-heads';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './ramp.module.css';

type RampFoldProps = { steps: RampSteps; ways: Ways };

/** The run-out ramp as figures: every day on which something happens, and what is left in each container at its end. */
export const RampFold = (props: RampFoldProps) => (
  <details className={styles.fold}>
    <summary>The same step by step</summary>
    <RampTable {...props} />
  </details>
);

function RampTable({ steps: { containers, opening, steps }, ways }: RampFoldProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="The run-out step by step">
      <table className={styles.table}>
        <ColumnHeads
          of={['Day', 'What happens', { number: 'Left in all' }, ...containers.map(({ name }) => ({ number: name }))]}
        />
        <tbody>
          <tr>
            <th scope="row">{showDayShort(ways.today, ways.today)}</th>
            <td className="soft">as it is now</td>
            <td className="number">
              <Figure of={opening.left} ways={ways} />
            </td>
            {opening.inEach.map((figure, place) => (
              <td key={containers[place]?.key} className="number">
                {figure ? <Figure of={figure} ways={ways} /> : <span className="soft">not there yet</span>}
              </td>
            ))}
          </tr>
          {steps.map((step) => (
            <StepRow key={step.day} step={step} ways={ways} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function StepRow({ step: { day, events, left, inEach }, ways }: { step: RampStep; ways: Ways }) {
  return (
    <tr>
      <th scope="row">{showDayShort(day, ways.today)}</th>
      <td>
        <ul className={styles.events}>
          {events.map((event, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two sprayings may be alike; their order never changes.
            <li key={place} className={event.kind === 'wasted' ? 'grave' : undefined}>
              <Event of={event} ways={ways} />
            </li>
          ))}
        </ul>
      </td>
      {[left, ...inEach].map((figure) => (
        <td key={figure.at} className={`number ${isNone(figure.value) ? 'soft' : ''}`}>
          <Figure of={figure} ways={ways} />
        </td>
      ))}
    </tr>
  );
}

const isNone = (value: RampStep['left']['value']): boolean => value.kind === 'stock' && value.amount === 0;

function Event({ of, ways }: { of: RampEvent; ways: Ways }) {
  if (of.kind !== 'sprayed') {
    return (
      <>
        {of.container} {of.kind === 'wasted' ? 'dies with' : 'comes with'} <Figure of={of.amount} ways={ways} />
      </>
    );
  }
  return (
    <>
      {of.recipe} takes <Figure of={of.amount} ways={ways} />
      {of.short && (
        <span className="grave">
          , of which <Figure of={of.short} ways={ways} /> is missing
        </span>
      )}
    </>
  );
}
