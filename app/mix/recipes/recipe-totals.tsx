'use client';

import { showMinutes, showMoney } from '@/shared/measure/show';
import facts from '../../_parts/facts.module.css';
import { SeverityLines } from '../../_parts/flag-lines';
import type { Ways } from '../../_parts/shown-text';
import { mgText } from './line-reading';
import styles from './recipe-form.module.css';
import type { LiveCheck } from './use-recipe-check';

/** What the whole recipe comes to while it is typed. */
export function RecipeTotals({ live, ways, fill }: { live: LiveCheck; ways: Ways; fill: string }) {
  const { check, isBehind, isAway } = live;
  return (
    <section aria-labelledby="comes-to" data-behind={isBehind || undefined} className={styles.totals}>
      <h2 id="comes-to" className={styles.heading}>
        What it comes to
      </h2>
      <div aria-live="polite">
        <p className={styles.cost}>
          {check.costPerLitre === null ? (
            <span className={styles.fault}>Cost not known</span>
          ) : (
            <>
              <b>{showMoney(check.costPerLitre, ways.currency)}</b> a litre
              {check.costPerFill !== null && ` · ${showMoney(check.costPerFill, ways.currency)} a fill of ${fill}`}
            </>
          )}
        </p>
        {check.toKnowCost.length > 0 ? (
          <p className="soft">{check.toKnowCost.join(' ')}</p>
        ) : (
          <p className="soft small">At the cheapest offer of each, one pack, without freight.</p>
        )}
        {isAway && <p className={styles.fault}>The shop does not answer. What you typed is kept here.</p>}
      </div>
      <dl className={`${facts.facts} ${styles.facts}`}>
        <div>
          <dt>People keep out for</dt>
          <dd className={check.reiMinutes === null ? styles.fault : undefined}>
            {check.reiMinutes === null ? 'not known: a label lacks it' : showMinutes(check.reiMinutes)}
          </dd>
        </div>
        <div>
          <dt>To wear</dt>
          <dd>{check.equipment.join(', ') || 'nothing entered'}</dd>
        </div>
        {check.strength.map(({ substance, mgPerL }) => (
          <div key={substance}>
            <dt>{substance}</dt>
            <dd>{mgText(mgPerL)}</dd>
          </div>
        ))}
      </dl>
      <SeverityLines lines={check.flags} />
    </section>
  );
}
