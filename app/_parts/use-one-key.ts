'use client';

import { useEffect, useRef } from 'react';
import { oneKeysAreOn } from './one-keys';

/**
 * Does something when one key is pressed anywhere on the page: not while somebody types or chooses in a field, not
 * together with Ctrl, Alt or the command key, not behind an open dialog, and not when one-key commands are turned off,
 * since who speaks to a computer can press keys without meaning to (WCAG 2.1.4).
 */
export function useOneKey(key: string, act: () => void): void {
  const latest = useRef(act);
  useEffect(() => {
    latest.current = act;
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== key || !isMeant(event) || !oneKeysAreOn()) return;
      event.preventDefault();
      latest.current();
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, [key]);
}

function isMeant(event: KeyboardEvent): boolean {
  const { ctrlKey, metaKey, altKey, repeat, isComposing, defaultPrevented, target } = event;
  if (ctrlKey || metaKey || altKey || repeat || isComposing || defaultPrevented) return false;
  const isTyping = target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null;
  return !isTyping && document.querySelector('dialog[open]') === null;
}
