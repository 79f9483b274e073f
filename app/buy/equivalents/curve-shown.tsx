import type { SeasonCurve } from '@/lib/views/season-curve';
import { ColumnHeads } from '../../_parts/column-heads';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import { CurveLater } from './curve-later';
import { CurveLegend } from './curve-legend';
import styles from './equivalents.module.css';

/** Season cost against use for each candidate, as a chart and as the table beside it. */
export function CurveShown({ curve, ways }: { curve: SeasonCurve; ways: Ways }) {
  const { names, rows } = curve;
  return (
    <>
      <CurveLegend names={names} />
      <CurveLater curve={curve} ways={ways} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard. */}
      <section className="sideways" tabIndex={0} aria-label="Season cost by use as a table">
        <table className={styles.table}>
          <ColumnHeads of={['Sprayed in the season', ...names.map((number) => ({ number }))]} />
          <tbody>
            {rows.map(({ spray, isPlanned, isTurn, costs }) => (
              <tr key={spray.at} className={isPlanned || isTurn ? styles.marked : undefined}>
                <th scope="row">
                  <Figure of={spray} ways={ways} />
                  {isPlanned && ', as planned'}
                  {isTurn && ', where the order turns'}
                </th>
                {costs.map((cost, at) => (
                  <td key={names[at]} className="number">
                    {cost ? <Figure of={cost} ways={ways} /> : ''}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
