'use client';

import { useMemo, useSyncExternalStore } from 'react';
import { afterwards, type MixAction } from '@/shared/mix/mix-action';
import { type MixProgress, readProgress } from '@/shared/mix/mix-progress';
import { keptKeys, MIX_KEY } from './kept-keys';

/*
 * The mixes that were begun on this device. What is kept is the mix: every tap reads it, changes it and writes it back, so
 * that a page that is thrown out of memory, or a second tab, goes on where the last one was.
 */

/** Where a browser keeps nothing, a mix lasts as long as its page. */
const unkept = new Map<string, string>();
const listeners = new Set<() => void>();
let changes = 0;

/** Every mix on this device, the latest begun first; null until the page is alive. */
export function useKeptMixes(): MixProgress[] | null {
  const seen = useSyncExternalStore(listen, () => changes, beforeAlive);
  return useMemo(() => (seen < 0 ? null : keptMixes()), [seen]);
}

const beforeAlive = (): number => -1;

function listen(heard: () => void): () => void {
  const elsewhere = () => told();
  listeners.add(heard);
  window.addEventListener('storage', elsewhere);
  return () => {
    listeners.delete(heard);
    window.removeEventListener('storage', elsewhere);
  };
}

/** Something about the mixes on this device is otherwise now. */
export function told(): void {
  changes += 1;
  for (const heard of listeners) heard();
}

/** Every mix on this device, the latest begun first. */
export function keptMixes(): MixProgress[] {
  const kept = [...keptKeys(), ...unkept.keys()].flatMap((key) => readProgress(textAt(key) ?? '') ?? []);
  return kept.sort((one, other) => other.begunAt - one.begunAt);
}

const textAt = (key: string): string | null => unkept.get(key) ?? localStorage.getItem(key);

/** One mix as it is kept now; null when it was thrown away. */
export const keptMix = (commandId: string): MixProgress | null => readProgress(textAt(MIX_KEY + commandId) ?? '');

/** Do one more thing in a mix, and keep it. */
export function act(commandId: string, ...actions: MixAction[]): void {
  const before = keptMix(commandId);
  const after = before && actions.reduce(afterwards, before);
  if (after && after !== before) keepMix(after);
}

/** Keep a mix on this device. */
export function keepMix(progress: MixProgress): void {
  const [key, text] = [MIX_KEY + progress.commandId, JSON.stringify(progress)];
  try {
    localStorage.setItem(key, text);
    unkept.delete(key);
  } catch {
    unkept.set(key, text);
  }
  forgetOldest();
  told();
}

/** Whether a mix would be lost with its page, because the browser keeps nothing. */
export const isUnkept = (commandId: string): boolean => unkept.has(MIX_KEY + commandId);

/** Throw a mix away. What is on record of it stays there. */
export function dropMix(commandId: string): void {
  unkept.delete(MIX_KEY + commandId);
  try {
    localStorage.removeItem(MIX_KEY + commandId);
  } catch {
    // There is nothing kept to be thrown away.
  }
  told();
}

/** Mixes that are on record are kept a little longer, for what they were planned to cost. */
const SENT_KEPT = 5;

function forgetOldest(): void {
  const sent = keptMixes().filter(({ state }) => state === 'sent');
  for (const { commandId } of sent.slice(SENT_KEPT)) localStorage.removeItem(MIX_KEY + commandId);
}
