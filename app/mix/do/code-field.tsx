'use client';

import { type FormEvent, useState } from 'react';
import { codeMeaning } from '@/shared/codes/code-meaning';
import { bottleKey, type MixPlan } from '@/shared/mix/mix-plan';
import { CodeCamera } from './code-camera';
import styles from './do.module.css';

type CodeFieldProps = {
  plan: MixPlan;
  /** The products that a bottle may be of. */
  among: string[];
  /** Takes the bottle, and gives what to say about it. */
  found: (product: string, bottle: { lotId: string; place: number }) => string;
};

/** Takes the code of a bottle: typed, from a hand scanner, which types it and presses Enter, or from the camera. */
export function CodeField({ plan, among, found }: CodeFieldProps) {
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const take = (code: string) => {
    const bottle = bottleOf(plan, among, code);
    setSaid(typeof bottle === 'string' ? bottle : found(bottle.product, bottle.spot));
    // What was read wrong stays to be put right.
    setText(typeof bottle === 'string' ? code : '');
  };
  const sent = (event: FormEvent) => {
    event.preventDefault();
    take(text);
  };
  return (
    <div className={styles.code}>
      <form onSubmit={sent}>
        <label htmlFor="code">Scan or type the code on a bottle</label>
        <div className={styles.typed}>
          <input
            id="code"
            value={text}
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
            onChange={({ target }) => setText(target.value)}
            aria-describedby="code-said"
          />
          <button type="submit">Take it</button>
        </div>
        <p id="code-said" role="status">
          {said}
        </p>
      </form>
      <CodeCamera onCode={take} />
    </div>
  );
}

type Found = { product: string; spot: { lotId: string; place: number } };

/** The bottle that a code names, or a sentence when it is none that can be meant. */
function bottleOf(plan: MixPlan, among: string[], text: string): Found | string {
  const meaning = codeMeaning(text);
  if (meaning.kind === 'misread') return meaning.message;
  if (meaning.kind !== 'bottle')
    return 'Scan the square code on a bottle of this shop, or type it, such as BB1:oil-b/1.';
  const spot = { lotId: meaning.bottle.lotId, place: meaning.bottle.number - 1 };
  const product = plan.products.find(({ bottles }) => bottles.some((one) => bottleKey(one) === bottleKey(spot)));
  if (!product) return 'The books have no such bottle, or nothing left in it. Take it as one that is not in the books.';
  if (!among.includes(product.id)) return `That is ${product.name}. Put it back: it is not for here.`;
  return { product: product.id, spot };
}
