'use client';

import { usePathname } from 'next/navigation';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { sprayedBenches, untold } from '@/shared/mix/spraying-told';
import { useKeptMixes } from './kept-mixes';
import { mixPlace } from './mix-place';
import styles from './unsent-mixes.module.css';
import { sendAll, useSending } from './use-sending';

/** Sends what waits to be sent: now, when the network comes back, and every half minute; and says what still waits. */
export function UnsentList() {
  const mixes = useKeptMixes() ?? [];
  const path = usePathname();
  useSending();
  const waiting = mixes.filter((mix) => mix.state === 'to-send' || mix.refusal !== null || untold(mix) !== null);
  // Where a mix is followed step by step, its own screen says so.
  if (waiting.length === 0 || path === '/mix/do') return null;
  return (
    <div role="status" className={styles.unsent}>
      {waiting.map((mix) => (
        <p key={mix.commandId}>
          <b>{mix.plan.recipe.name}</b> {saidOf(mix)} <a href={mixPlace(mix)}>Open it</a>
        </p>
      ))}
      {waiting.some((mix) => mix.state === 'to-send' || untold(mix) !== null) && (
        <button type="button" onClick={sendAll}>
          Send now
        </button>
      )}
    </div>
  );
}

function saidOf(mix: MixProgress): string {
  const { plan, sprayingUntil, state } = mix;
  const names = plan.shopBenches.filter(({ id }) => sprayedBenches(mix).includes(id)).map(({ name }) => name);
  const isUntold = untold(mix) !== null;
  const keepOut = isUntold ? ` Keep people out of ${names.join(', ')}: no board says so yet.` : '';
  if (state === 'to-send')
    return `is not sent yet: it is kept on this device, and sent when the network is back.${keepOut}`;
  if (mix.refusal !== null) return `was not taken into the books yet: something has to be put right.${keepOut}`;
  return `${sprayingUntil === null ? 'is being sprayed' : 'was sprayed'}, and the shop does not know yet.${keepOut}`;
}
