'use client';

import { type RefObject, useEffect } from 'react';

/**
 * Keeps what is being typed into a form through a reload, for as long as the tab is open. Hidden fields and files are
 * not kept. Once the form was sent and done, nothing is.
 */
export function useHalfTyped(form: RefObject<HTMLFormElement | null>, key: string, isDone: boolean | object): void {
  useEffect(() => {
    const element = form.current;
    if (!element) return;
    if (isDone) sessionStorage.removeItem(key);
    else refill(element, sessionStorage.getItem(key));
    const keep = () => {
      const typed = JSON.stringify(fieldsOf(element));
      // A browser keeps a few megabytes; whoever pastes more still has it where it came from.
      if (typed.length < MOST_KEPT) sessionStorage.setItem(key, typed);
    };
    element.addEventListener('input', keep);
    return () => element.removeEventListener('input', keep);
  }, [form, key, isDone]);
}

const MOST_KEPT = 1_000_000;

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

const typedFields = (form: HTMLFormElement): Field[] =>
  [...form.querySelectorAll<Field>('input:not([type=hidden], [type=file], [type=radio]), textarea, select')].filter(
    ({ name }) => name !== '',
  );

const fieldsOf = (form: HTMLFormElement): Record<string, string> =>
  Object.fromEntries(typedFields(form).map(({ name, value }) => [name, value]));

function refill(form: HTMLFormElement, kept: string | null): void {
  if (kept === null) return;
  const values = new Map(Object.entries(JSON.parse(kept)));
  for (const field of typedFields(form)) {
    const value = values.get(field.name);
    if (typeof value === 'string' && value !== '') field.value = value;
  }
}
