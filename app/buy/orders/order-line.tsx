'use client';

import type { OfferToOrder } from '@/lib/views/orders';
import type { FormState } from '@/shared/forms/form-state';
import type { Fields } from '@/shared/forms/rows';
import { showMoney } from '@/shared/measure/show';
import { FormField, typedIn } from '../../_parts/form-field';
import styles from './order-form.module.css';

type LineProps = { state: FormState; offer: OfferToOrder; row: number; first: Fields; currency: string };

/** One pack that can be ordered: how many, and what one is quoted at. It is not ordered as long as its count is blank. */
export function OfferToOrderLine({ state, offer, row, first, currency }: LineProps) {
  const at = (part: string) => `lines[${row}].${part}`;
  const value = (part: string) => typedIn(state, at(part), first[at(part)] ?? '');
  const name = `${offer.product}, ${offer.pack}`;
  return (
    <li className={styles.line}>
      <p className={styles.name}>
        <b>{offer.product}</b>, {offer.pack} · {showMoney(offer.price, currency)}
        {offer.breaks.map(({ atLeast, price }) => (
          <span key={atLeast} className="soft">
            {' '}
            · {showMoney(price, currency)} from {atLeast}
          </span>
        ))}{' '}
        <span className="soft">· {leadText(offer.leadDays)}</span>
      </p>
      <input type="hidden" name={at('offer')} value={offer.id} />
      <FormField
        state={state}
        name={at('count')}
        label={
          <>
            Packs<span className="spoken"> of {name}</span>
          </>
        }
      >
        {(wiring) => <input {...wiring} inputMode="numeric" defaultValue={value('count')} autoComplete="off" />}
      </FormField>
      <FormField
        state={state}
        name={at('price')}
        label={
          <>
            One at<span className="spoken"> for {name}</span>, {currency}
          </>
        }
      >
        {(wiring) => (
          <input
            {...wiring}
            inputMode="decimal"
            placeholder="as offered"
            defaultValue={value('price')}
            autoComplete="off"
          />
        )}
      </FormField>
    </li>
  );
}

function leadText(days: number | null): string {
  if (days === null) return 'delivery time not known';
  return `${days} working ${days === 1 ? 'day' : 'days'}`;
}
