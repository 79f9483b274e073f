'use client';

import { useState } from 'react';
import { stockText } from '@/shared/measure/read-stock';
import { bottleKey, productIn } from '@/shared/mix/mix-plan';
import type { MixProgress, Part } from '@/shared/mix/mix-progress';
import { plannedPour, pourKey } from '@/shared/mix/mix-screens';
import { amountOf, type PourFault } from '@/shared/mix/poured-so-far';
import { stock } from '@/shared/quantity/amounts';
import { CodeField } from './code-field';
import styles from './do.module.css';
import type { Act } from './frame';
import { PartFields } from './part-fields';

type PourChangeProps = {
  mix: MixProgress;
  act: Act;
  fill: number;
  product: string;
  parts: Part[];
  faults: PourFault[];
  isAsked: boolean;
  isLeftOut: boolean;
};

/** What went in otherwise than the sheet has it: another bottle, another amount, two bottles, none, or one product more. */
export function PourChange({ mix, act, fill, product, parts, faults, isAsked, isLeftOut }: PourChangeProps) {
  const its = productIn(mix.plan, product);
  const change = (next: Part[]) => act({ do: 'change', fill, product, parts: next });
  const shown: Part[] = parts.length > 0 ? parts : isLeftOut ? [] : [fresh(its.bottles[0])];
  const next = its.bottles.find((one) => !shown.some(({ bottle }) => bottle && bottleKey(bottle) === bottleKey(one)));
  /** The last bottle ran out: what is still to come of the sheet's amount is filled in for the next one. */
  const withRest = (parts: Part[], bottle: typeof next): Part[] => {
    const last = parts.at(-1);
    const poured = parts.map((part) => amountOf(part, its)).reduce((sum, one) => sum + (one.ok ? one.value : 0), 0);
    const rest = (plannedPour(mix, product)?.perFill ?? 0) - poured;
    const amount = rest > 0 ? stockText(stock(rest), its.form) : '';
    const emptied = parts.map((part) => (part === last && part.bottle ? { ...part, ranOut: true } : part));
    return [...emptied, { ...fresh(bottle), amount }];
  };
  const scanned = (_: string, bottle: { lotId: string; place: number }) => {
    const [first, ...rest] = shown;
    act({ do: 'choose', product, bottle });
    change([{ ...(first ?? fresh(undefined)), bottle, heldMore: false }, ...rest]);
    return 'Noted: it comes from this bottle.';
  };
  return (
    <section className={styles.change} aria-label="What was otherwise">
      {shown.map((part, at) => (
        <PartFields
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines are told apart by their place alone.
          key={at}
          {...{ at, part, product: its }}
          faults={faults.filter((fault) => fault.part === at)}
          isAsked={isAsked}
          change={(changed) => change(shown.map((one, number) => (number === at ? changed : one)))}
          remove={shown.length > 1 ? () => change(shown.filter((_, number) => number !== at)) : null}
        />
      ))}
      {!isLeftOut && (
        <button type="button" onClick={() => change(withRest(shown, next))}>
          It ran out: the rest from another bottle
        </button>
      )}
      <CodeField plan={mix.plan} among={[product]} found={scanned} />
      <div className={styles.choices}>
        <button type="button" onClick={() => act({ do: 'as-planned', fill, product })}>
          As the sheet has it
        </button>
        {mix.added.includes(product) ? (
          <button type="button" onClick={() => act({ do: 'take-back', product })}>
            Don't add it
          </button>
        ) : (
          !isLeftOut &&
          // What cannot be measured is left out with a reason, above.
          !plannedPour(mix, product)?.farOff && (
            <LeaveOut name={its.name} leaveOut={() => act({ do: 'left-out', fill, product })} />
          )
        )}
        <AddProduct
          mix={mix}
          add={(other) => act({ do: 'add', fill, product: other }, { do: 'go', to: pourKey(fill, other) })}
        />
      </div>
    </section>
  );
}

const fresh = (bottle: { lotId: string; place: number } | undefined): Part => ({
  bottle: bottle ? { lotId: bottle.lotId, place: bottle.place } : null,
  amount: '',
  heldMore: false,
});

function LeaveOut({ name, leaveOut }: { name: string; leaveOut: () => void }) {
  const [asked, setAsked] = useState(false);
  return asked ? (
    <p className={styles.sure}>
      Without {name} this is another mix than the recipe, and the record says so.{' '}
      <button type="button" onClick={leaveOut}>
        Yes, leave it out
      </button>
    </p>
  ) : (
    <button type="button" onClick={() => setAsked(true)}>
      Leave it out
    </button>
  );
}

function AddProduct({ mix, add }: { mix: MixProgress; add: (product: string) => void }) {
  const others = mix.plan.products.filter(
    ({ id }) => !mix.added.includes(id) && !mix.plan.pours.some(({ product }) => product === id),
  );
  return (
    <p className={styles.add}>
      <label htmlFor="add-product">Something else went in, too</label>
      <select id="add-product" value="" onChange={({ target }) => target.value !== '' && add(target.value)}>
        <option value="">Choose what</option>
        {others.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </p>
  );
}
