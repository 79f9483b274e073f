'use client';

import { usePathname } from 'next/navigation';
import { useKeptMixes } from './kept-mixes';
import { mixPlace } from './mix-place';
import styles from './unsent-mixes.module.css';
import { sendAll, useSending } from './use-sending';

/** Sends what waits to be sent: now, when the network comes back, and every half minute; and says what still waits. */
export function UnsentList() {
  const mixes = useKeptMixes() ?? [];
  const path = usePathname();
  useSending();
  const waiting = mixes.filter(({ state, refusal }) => state === 'to-send' || refusal !== null);
  // Where a mix is followed step by step, its own screen says so.
  if (waiting.length === 0 || path === '/mix/do') return null;
  return (
    <div role="status" className={styles.unsent}>
      {waiting.map((mix) => (
        <p key={mix.commandId}>
          <b>{mix.plan.recipe.name}</b>{' '}
          {mix.state === 'to-send'
            ? 'is not sent yet: it is kept on this device, and sent when the network is back.'
            : 'was not taken into the books yet: something has to be put right.'}{' '}
          <a href={mixPlace(mix)}>Open it</a>
        </p>
      ))}
      {waiting.some(({ state }) => state === 'to-send') && (
        <button type="button" onClick={sendAll}>
          Send now
        </button>
      )}
    </div>
  );
}
