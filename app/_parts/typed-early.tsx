'use client';

import { useEffect } from 'react';

declare global {
  interface Window {
    /** What was typed or ticked before this page could listen, by its field. */
    typedEarly?: Map<EventTarget, string | boolean>;
  }
}

/** How often a field is looked at until React has taken it over, and how long after that it may still be emptied, ms. */
const LOOK_EVERY = 50;
const LOOKS_AFTER = 10;

/** Types once more what was typed before this page could listen: each field once React has taken it over and emptied it. */
export function TypedEarly() {
  useEffect(() => {
    const looks = new Map<EventTarget, number>();
    let timer: number | undefined;
    const look = () => {
      const typed = window.typedEarly;
      for (const [field, value] of typed ?? []) {
        if (!(field instanceof HTMLElement) || !field.isConnected) typed?.delete(field);
        else if (isTakenOver(field)) {
          const seen = (looks.get(field) ?? 0) + 1;
          looks.set(field, seen);
          if (typeAgain(field, value) || seen > LOOKS_AFTER) typed?.delete(field);
        }
      }
      if (typed?.size) timer = window.setTimeout(look, LOOK_EVERY);
      else window.typedEarly = undefined;
    };
    look();
    return () => window.clearTimeout(timer);
  }, []);
  return null;
}

/** React keeps what it knows of an element under a key of its own on it. Parts of a page are taken over one by one. */
const isTakenOver = (field: HTMLElement): boolean => Object.keys(field).some((key) => key.startsWith('__reactProps'));

/** Says whether anything had to be typed. */
function typeAgain(field: HTMLElement, value: string | boolean): boolean {
  if (typeof value === 'boolean') {
    if (!(field instanceof HTMLInputElement) || field.checked === value) return false;
    field.click();
    return true;
  }
  if ('value' in field && field.value === value) return false;
  // React takes for typed only what did not come from itself: it watches its own way to the value, not the browser's.
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }));
  return true;
}
