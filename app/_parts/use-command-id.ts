'use client';

import { useEffect, useState } from 'react';

/**
 * The id of the command that a form will send, made in the browser so that sending it twice is one command. A new one
 * is made once the last was done.
 *
 * Takes    whether it was done; for a form that is sent again and again, the answer that said so
 * Gives    32 hexadecimal digits; empty until the page is alive
 */
export function useCommandId(isDone: boolean | object): string {
  const [id, setId] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a command that is done needs a new id for the next one.
  useEffect(() => setId(freshId()), [isDone]);
  return id;
}

/** A random command id. (crypto.randomUUID is missing where the page comes over plain http.) */
export function freshId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
