'use client';

import type { SeasonCurve } from '@/lib/views/season-curve';
import type { Ways } from '../../_parts/shown-text';
import { useAsked } from '../../_parts/use-asked';
import { CurveShown } from './curve-shown';
import styles from './equivalents.module.css';

type CurveAskedProps = { shop: string; recipe: string; product: string; ways: Ways };

/** Season cost against use for each candidate. It is worked out when the page stands; where no script runs, by a link. */
export function CurveAsked({ shop, recipe, product, ways }: CurveAskedProps) {
  const query = new URLSearchParams({ shop, recipe, product });
  const curve = useAsked<SeasonCurve>({ address: `/buy/equivalents/curve?${query}` }, 0);
  if (curve === 'away') return <p className="grave">It could not be worked out. Reload the page to try again.</p>;
  if (curve === null || curve === 'asking') {
    return (
      <>
        <p role="status" className={styles.asked}>
          Working out the season at other uses…
        </p>
        <noscript>
          <a href={`/buy/equivalents?${new URLSearchParams({ recipe, product, curve: 'yes' })}#turns`}>
            Show the season at other uses
          </a>
        </noscript>
      </>
    );
  }
  return <CurveShown curve={curve} ways={ways} />;
}
