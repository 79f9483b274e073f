'use client';

import { useEffect, useRef, useState } from 'react';
import type { BuyScreen } from '@/lib/views/buy';
import {
  isSupposed,
  MOST_ML,
  MOST_PLANTS,
  PRICE_PERCENT,
  USE_PERCENT,
  type WhatIfFields,
  whatIfIn,
} from '@/shared/forms/what-if';
import type { Day } from '@/shared/time/day';
import type { Ways } from '../_parts/shown-text';
import { useWhatIf } from './use-what-if';
import styles from './what-if.module.css';
import { WhatIfAnswer } from './what-if-answer';

type WhatIfProps = BuyScreen['whatIf'] & { shop: string; product: { id: string; name: string }; ways: Ways };

/**
 * What another price, another use, a spraying more, a lost week or a further bench would change. Where no script runs, a
 * plain form asks for the page with the answer in it.
 */
export function WhatIf({ shop, product, ways, fields, said, programs }: WhatIfProps) {
  const [typed, setTyped] = useState(fields);
  const heard = useWhatIf(shop, isSupposed(typed) ? typed : null, said);
  const form = useRef<HTMLFormElement>(null);
  const look = () => {
    if (form.current) setTyped(typedIn(form.current));
  };
  // What was moved before this page could listen, or what a browser puts back after a reload, counts as well.
  useEffect(look, []);
  return (
    <section aria-labelledby="what-if">
      <h2 id="what-if">What if …</h2>
      <form ref={form} action="/buy#what-if" method="get" onInput={look} className={styles.form}>
        <Scope product={product} typed={typed} />
        <Slider name="price" label="its price" typed={typed} {...PRICE_PERCENT} />
        <Slider name="use" label="its use" typed={typed} {...USE_PERCENT} />
        <OneMore programs={programs} typed={typed} today={ways.today} />
        <Wider programs={programs} typed={typed} />
        <noscript>
          <button type="submit">Show what changes</button>
        </noscript>
      </form>
      <WhatIfAnswer {...heard} ways={ways} />
    </section>
  );
}

const typedIn = (form: HTMLFormElement): WhatIfFields =>
  whatIfIn(Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)])));

type Typed = { typed: WhatIfFields };

function Scope({ product, typed }: Typed & Pick<WhatIfProps, 'product'>) {
  return (
    <div>
      <label htmlFor="if-product">Price and use of</label>
      <select id="if-product" name="product" defaultValue={typed.product}>
        <option value={product.id}>{product.name}</option>
        <option value="">every product</option>
      </select>
    </div>
  );
}

type SliderProps = Typed & { name: 'price' | 'use'; label: string; min: number; max: number };

function Slider({ name, label, typed, min, max }: SliderProps) {
  const value = typed[name] || '100';
  return (
    <div>
      <label htmlFor={`if-${name}`}>
        {label === 'its price' ? 'Price' : 'Use'}: <output htmlFor={`if-${name}`}>{value} %</output> of what it is
      </label>
      <input id={`if-${name}`} name={name} type="range" min={min} max={max} step={5} defaultValue={value} />
    </div>
  );
}

type ProgramsProps = Typed & Pick<WhatIfProps, 'programs'>;

function OneMore({ programs, typed, today }: ProgramsProps & { today: Day }) {
  return (
    <>
      <div className={styles.pair}>
        <Programs name="extra" label="A spraying more of" programs={programs} typed={typed} />
        <div>
          <label htmlFor="if-extraOn">on</label>
          <input id="if-extraOn" name="extraOn" type="date" min={today} defaultValue={typed.extraOn} />
        </div>
      </div>
      <div>
        <label htmlFor="if-lost">Nothing sprayed for the seven days from</label>
        <input id="if-lost" name="lost" type="date" min={today} defaultValue={typed.lost} />
      </div>
    </>
  );
}

function Wider({ programs, typed }: ProgramsProps) {
  return (
    <div className={styles.pair}>
      <Programs name="bench" label="A bench more with" programs={programs} typed={typed} />
      <div>
        <label htmlFor="if-plants">of so many plants</label>
        <input id="if-plants" name="plants" type="number" min={1} max={MOST_PLANTS} defaultValue={typed.plants} />
      </div>
      <div>
        <label htmlFor="if-ml">at mL a plant</label>
        <input id="if-ml" name="ml" type="number" min={1} max={MOST_ML} defaultValue={typed.ml} />
      </div>
    </div>
  );
}

function Programs({ name, label, programs, typed }: ProgramsProps & { name: 'extra' | 'bench'; label: string }) {
  return (
    <div>
      <label htmlFor={`if-${name}`}>{label}</label>
      <select id={`if-${name}`} name={name} defaultValue={typed[name]}>
        <option value="">none</option>
        {programs.map((program) => (
          <option key={program.id} value={program.id}>
            {program.name}
          </option>
        ))}
      </select>
    </div>
  );
}
