'use client';

import type { LeadSeen } from '@/lib/views/learned-from-orders';
import { Figure } from '../../_parts/figure';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import type { Ways } from '../../_parts/shown-text';
import { useSent } from '../../_parts/use-sent';
import { takeLeadAction } from './actions';
import styles from './orders.module.css';

type LeadFormProps = { shop: string; supplier: string; lead: LeadSeen; ways: Ways };

/** How long a supplier really took beside what its offers say, and one step to let them say it. */
export function LeadForm({ shop, supplier, lead, ways }: LeadFormProps) {
  const { state, send, isSending, form, commandId } = useSent(takeLeadAction, `lead ${supplier}`);
  const { formId, deliveries, median, worst, days, set } = lead;
  const choices = days.median === days.worst ? (['worst'] as const) : (['median', 'worst'] as const);
  const isSet = (day: number) => set.length === 1 && set[0] === day;
  return (
    <form ref={form} action={send} className={styles.take}>
      <HiddenFields of={{ commandId: commandId || formId, shop, supplier }} />
      <p>
        From order to arrival <Figure of={median} ways={ways} /> as a rule, <Figure of={worst} ways={ways} /> at worst,
        from {deliveries} {deliveries === 1 ? 'delivery' : 'deliveries'}. Their offers say {setText(set)}.
      </p>
      {choices
        .filter((which) => !isSet(days[which]))
        .map((which) => (
          <button key={which} type="submit" name="which" value={which} disabled={isSending}>
            Count {days[which]} for all of their offers
          </button>
        ))}
      <FormAnswer state={state} />
    </form>
  );
}

function setText(set: (number | null)[]): string {
  if (set.length === 0) return 'nothing';
  const days = set.map((day) => (day === null ? 'not known' : String(day)));
  return `${days.join(' or ')}${set.includes(null) && set.length === 1 ? '' : ' working days'}`;
}
