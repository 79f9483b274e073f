'use client';

import { useState } from 'react';

/** Copies a text. Browsers allow that over https and on this machine; elsewhere the button says what to do instead. */
export function CopyButton({ text, of }: { text: string; of: string }) {
  const [said, setSaid] = useState('Copy');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied');
    } catch {
      setSaid('Select the address to copy it');
    }
  };
  return (
    <button type="button" aria-label={`${said}: ${of}`} onClick={() => void copy()}>
      {said}
    </button>
  );
}
