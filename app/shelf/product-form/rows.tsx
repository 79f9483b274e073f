'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import { ROWS, type RowList } from '@/shared/forms/product-fields';
import { rowOf, rowsIn } from '@/shared/forms/rows';
import styles from './product-form.module.css';

type RowsProps = {
  list: RowList;
  /** What one line is, such as "substance". */
  one: string;
  draft: Readonly<Record<string, string>>;
  change: (next: (draft: Record<string, string>) => Record<string, string>) => void;
  children: (row: string) => ReactNode;
};

/** Lines of a product that repeat: any number, each with its own fields. Without scripts, a few blank ones at the end. */
export function Rows({ list, one, draft, change, children }: RowsProps) {
  const written = rowsIn(Object.keys(draft), list);
  const rows = written.length > 0 ? written : [0];
  const last = rows.at(-1) ?? 0;
  const adder = useRef<HTMLButtonElement>(null);
  const [added, setAdded] = useState<string | null>(null);
  const first = ROWS[list].parts[0];
  useEffect(() => {
    if (added) document.getElementById(added)?.focus();
  }, [added]);
  const add = () => {
    // The line on the screen may be one that nobody has typed into, and stays when another comes.
    const fresh = [...rows, last + 1].map((row) => [`${list}[${row}]${first}`, '']);
    change((before) => ({ ...Object.fromEntries(fresh), ...before }));
    setAdded(`${list}[${last + 1}]${first}`);
  };
  const takeOut = (row: number) => {
    change((before) => Object.fromEntries(Object.entries(before).filter(([name]) => rowOf(name, list) !== row)));
    adder.current?.focus();
  };
  return (
    <>
      {rows.map((row, place) => (
        <fieldset key={row} className={styles.row}>
          <legend className="spoken">
            {one} {place + 1}
          </legend>
          {children(`${list}[${row}]`)}
          {(rows.length > 1 || written.length > 0) && (
            <button type="button" className={styles.takeOut} onClick={() => takeOut(row)}>
              Take {one} {place + 1} out
            </button>
          )}
        </fieldset>
      ))}
      <noscript>
        {[1, 2, 3].map((more) => (
          <fieldset key={more} className={styles.row}>
            <legend>One more {one}</legend>
            {children(`${list}[${last + more}]`)}
          </fieldset>
        ))}
      </noscript>
      <p className={styles.add}>
        <button ref={adder} type="button" onClick={add}>
          One more {one}
        </button>
      </p>
    </>
  );
}
