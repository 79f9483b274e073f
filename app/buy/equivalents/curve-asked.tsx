'use client';

import type { SeasonCurve } from '@/lib/views/season-curve';
import { showMoneyIfKnown, showVolume } from '@/shared/measure/show';
import type { Ways } from '../../_parts/shown-text';
import { useAsked } from '../../_parts/use-asked';
import { CurveChart } from './curve-chart';
import styles from './equivalents.module.css';

type CurveAskedProps = { shop: string; recipe: string; product: string; ways: Ways };

/** Season cost against use for each candidate, as a chart and as the table beside it. It is worked out when it is wanted. */
export function CurveAsked({ shop, recipe, product, ways }: CurveAskedProps) {
  const query = new URLSearchParams({ shop, recipe, product });
  const curve = useAsked<SeasonCurve>({ address: `/buy/equivalents/curve?${query}` }, 0);
  if (curve === 'away') return <p className="grave">It could not be worked out. Reload the page to try again.</p>;
  if (curve === null || curve === 'asking') return <p role="status">Working out the season at other uses…</p>;
  return (
    <>
      <CurveChart curve={curve} ways={ways} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard. */}
      <section className="sideways" tabIndex={0} aria-label="Season cost by use as a table">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Sprayed in the season</th>
              {curve.names.map((name) => (
                <th key={name} scope="col" className="number">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {curve.points.map(({ sprayMl, costs }) => (
              <tr key={sprayMl}>
                <th scope="row">
                  {showVolume(sprayMl * 1_000, ways.units)}
                  {sprayMl === curve.planned && ', as planned'}
                </th>
                {costs.map((cost, at) => (
                  <td key={curve.names[at]} className="number">
                    {showMoneyIfKnown(cost, ways.currency)}
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
