'use client';

import { type RefObject, useEffect } from 'react';

/**
 * Keeps what is being typed into a form through a reload, for as long as the tab is open. Hidden fields, files and
 * passwords are not kept. Once the form was sent and done, nothing is.
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

/** Fields by their name and which of that name they are: several boxes to tick share one. */
function typedFields(form: HTMLFormElement): Map<string, Field> {
  const fields = new Map<string, Field>();
  const seen = new Map<string, number>();
  for (const field of form.querySelectorAll<Field>(
    'input:not([type=hidden], [type=file], [type=password]), textarea, select',
  )) {
    if (field.name === '') continue;
    const before = seen.get(field.name) ?? 0;
    seen.set(field.name, before + 1);
    fields.set(before === 0 ? field.name : `${field.name} ${before}`, field);
  }
  return fields;
}

const isTicked = (field: Field): field is HTMLInputElement => field.type === 'checkbox' || field.type === 'radio';

const fieldsOf = (form: HTMLFormElement): Record<string, string | boolean> =>
  Object.fromEntries(
    [...typedFields(form)].map(([key, field]) => [key, isTicked(field) ? field.checked : field.value]),
  );

function refill(form: HTMLFormElement, kept: string | null): void {
  if (kept === null) return;
  const values = new Map(Object.entries(JSON.parse(kept)));
  for (const [key, field] of typedFields(form)) {
    const value = values.get(key);
    if (typeof value === 'boolean' && isTicked(field)) field.checked = value;
    else if (typeof value === 'string' && value !== '' && !isTicked(field)) field.value = value;
  }
}
