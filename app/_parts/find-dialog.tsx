'use client';

import { type FormEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { LONGEST_SEARCH } from '@/shared/codes/longest-search';
import styles from './find-dialog.module.css';
import { FoundGroups, foundWords } from './found-groups';
import { OneKeysSwitch } from './one-keys-switch';
import { useSearch } from './use-search';

/**
 * Searches while one types. Down and Up walk through what was found, Enter opens it, Escape or a click beside it closes. Without an answer
 * yet, Enter goes to the page that searches.
 */
export function FindDialog({ onClose }: { onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [typed, setTyped] = useState('');
  const { answer, trouble } = useSearch(typed);
  const groups = answer?.groups ?? [];
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);

  const submit = (event: FormEvent) => {
    const best = answer?.q === typed.trim() ? dialog.current?.querySelector<HTMLAnchorElement>('[data-found]') : null;
    if (!best) return;
    event.preventDefault();
    best.click();
  };
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-label="Find anything"
      onClose={onClose}
      onKeyDown={walk}
      onClick={({ target }) => isDone(target, dialog.current) && dialog.current?.close()}
    >
      <search className={styles.inside}>
        <form className={styles.top} action="/search" onSubmit={submit}>
          <label className="spoken" htmlFor="find-anything">
            Product, bottle, bench, recipe or code
          </label>
          <input
            id="find-anything"
            name="q"
            type="search"
            placeholder="Product, bottle, bench, recipe or code"
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
            enterKeyHint="go"
            maxLength={LONGEST_SEARCH}
            value={typed}
            onChange={({ target }) => setTyped(target.value)}
          />
          <button type="button" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </form>
        <p className={styles.said} role="status">
          {trouble || (answer && answer.q !== '' ? foundWords(groups) : '')}
        </p>
        <FoundGroups groups={groups} allAt={`/search?${new URLSearchParams({ q: typed })}`} />
        <OneKeysSwitch />
      </search>
    </dialog>
  );
}

/** A click beside the dialog, or on something in it that leads away. */
const isDone = (target: EventTarget, dialog: HTMLDialogElement | null): boolean =>
  target === dialog || (target instanceof Element && target.closest('a') !== null);

/** Down and Up go from the field through what was found, and back into the field. */
function walk(event: KeyboardEvent<HTMLDialogElement>): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (step === 0 || event.nativeEvent.isComposing) return;
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>('#find-anything, [data-found]')];
  const at = document.activeElement instanceof HTMLElement ? stops.indexOf(document.activeElement) : -1;
  event.preventDefault();
  stops[at === -1 ? 0 : (at + step + stops.length) % stops.length]?.focus();
}
