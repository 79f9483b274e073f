'use client';

import { useRouter } from 'next/navigation';
import { type ReactNode, useEffect, useRef } from 'react';
import type { ShelfQuery } from '@/lib/views/shelf';
import styles from './shelf-filter.module.css';
import { shelfHref } from './shelf-href';

type ShelfFilterProps = {
  query: ShelfQuery;
  kinds: string[];
  places: { value: string; text: string }[];
  putAway: number;
  children: ReactNode;
};

/** Long enough to finish a word, short enough to seem at once. */
const TYPING_MS = 200;

/**
 * What to show of the shelf. A plain form: it ends up in the address, and so can be kept and shared. Where scripts run,
 * it answers while one types and chooses.
 */
export function ShelfFilter({ query, kinds, places, putAway, children }: ShelfFilterProps) {
  const { form, ask } = useAsking(query);
  return (
    <form
      ref={form}
      className={styles.filter}
      action="/shelf"
      aria-label="What to show"
      onInput={(event) => ask(event.target instanceof HTMLInputElement ? TYPING_MS : 0)}
    >
      <input type="hidden" name="as" value={query.as} />
      <div className={styles.find}>
        <label htmlFor="find">Name or substance</label>
        <input id="find" name="find" type="search" defaultValue={query.find} autoComplete="off" enterKeyHint="search" />
      </div>
      <Choice name="kind" label="Kind" value={query.kind}>
        <option value="">every kind</option>
        {kinds.map((kind) => (
          <option key={kind}>{kind}</option>
        ))}
      </Choice>
      <Choice name="place" label="Stands in" value={query.place}>
        <option value="">every place</option>
        {places.map(({ value, text }) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </Choice>
      <Choice name="sort" label="In order of" value={query.sort}>
        <option value="name">name</option>
        <option value="dies">what dies first</option>
        <option value="reorder">what to reorder first</option>
        <option value="value">value</option>
      </Choice>
      {putAway > 0 && (
        <label className={styles.away}>
          <input name="away" type="checkbox" value="too" defaultChecked={query.away === 'too'} />
          with {putAway} put away
        </label>
      )}
      <button type="submit" className={styles.show}>
        Show
      </button>
      {children}
    </form>
  );
}

type ChoiceProps = { name: string; label: string; value: string; children: ReactNode };

function Choice({ name, label, value, children }: ChoiceProps) {
  return (
    <div className={styles.choice}>
      <label htmlFor={name}>{label}</label>
      <select id={name} name={name} defaultValue={value}>
        {children}
      </select>
    </div>
  );
}

/** Puts what the form says into the address, and what a link put into the address back into the form. */
function useAsking(query: ShelfQuery) {
  const router = useRouter();
  const form = useRef<HTMLFormElement>(null);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);

  useEffect(() => {
    const element = form.current;
    if (!element || element.contains(document.activeElement)) return;
    for (const name of ['find', 'kind', 'place', 'sort'] as const) {
      const field = element.elements.namedItem(name);
      if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) field.value = query[name];
    }
  }, [query]);
  useEffect(() => () => clearTimeout(waiting.current), []);

  const ask = (after: number) => {
    clearTimeout(waiting.current);
    waiting.current = setTimeout(() => {
      if (form.current) router.replace(shelfHref(asked(form.current, query)), { scroll: false });
    }, after);
  };
  return { form, ask };
}

function asked(form: HTMLFormElement, query: ShelfQuery): ShelfQuery {
  const typed = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value).trim()]));
  // Whatever else is asked for begins on its first page.
  return { ...query, away: '', page: '', ...typed };
}
