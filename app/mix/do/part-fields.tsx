'use client';

import { leftText } from '@/shared/mix/bottles-to-take';
import { bottleKey, type PlanProduct } from '@/shared/mix/mix-plan';
import type { Part } from '@/shared/mix/mix-progress';
import type { PourFault } from '@/shared/mix/poured-so-far';
import { AmountField } from './amount-field';
import styles from './do.module.css';

type PartFieldsProps = {
  at: number;
  part: Part;
  product: PlanProduct;
  faults: PourFault[];
  isAsked: boolean;
  change: (part: Part) => void;
  remove: (() => void) | null;
};

/** One bottle and how much came out of it. */
export function PartFields({ at, part, product, faults, isAsked, change, remove }: PartFieldsProps) {
  // Nobody is told off for an amount that is still to be typed.
  const told = faults.filter(({ kind }) => kind !== 'amount' || isAsked || part.amount.trim() !== '');
  const over = faults.some(({ kind }) => kind === 'over-books') || part.heldMore;
  const describedBy = told.length > 0 ? `part-${at}-fault` : undefined;
  return (
    <fieldset className={styles.part}>
      <legend className="spoken">Bottle {at + 1}</legend>
      <label htmlFor={`part-${at}-amount`}>How much was poured</label>
      <AmountField
        id={`part-${at}-amount`}
        text={part.amount}
        kind={product.form}
        isWrong={told.length > 0}
        describedBy={describedBy}
        change={(amount) => change({ ...part, amount })}
      />
      <label htmlFor={`part-${at}-bottle`}>From which bottle</label>
      <select
        id={`part-${at}-bottle`}
        value={part.bottle ? bottleKey(part.bottle) : ''}
        onChange={({ target }) => change({ ...part, bottle: spotOf(product, target.value), heldMore: false })}
      >
        {product.bottles.map((bottle) => (
          <option key={bottleKey(bottle)} value={bottleKey(bottle)}>
            {bottle.code}: {leftText(bottle, product)} left{bottle.expired !== null && `, EXPIRED ${bottle.expired}`}
          </option>
        ))}
        <option value="">One that is not in the books</option>
      </select>
      <div id={describedBy}>
        {told.map(({ message }) => (
          <p key={message} className={styles.fault}>
            {message}
          </p>
        ))}
      </div>
      {over && part.bottle && (
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={part.heldMore}
            onChange={({ target }) => change({ ...part, heldMore: target.checked })}
          />
          It held more than the books say
        </label>
      )}
      {part.bottle && (
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={part.ranOut === true}
            onChange={({ target }) => change({ ...part, ranOut: target.checked })}
          />
          It is empty now, whatever the books say
        </label>
      )}
      {remove && (
        <button type="button" onClick={remove}>
          Not from this one
        </button>
      )}
    </fieldset>
  );
}

function spotOf({ bottles }: PlanProduct, key: string): Part['bottle'] {
  const bottle = bottles.find((one) => bottleKey(one) === key);
  return bottle ? { lotId: bottle.lotId, place: bottle.place } : null;
}
