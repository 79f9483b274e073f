'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { isUnderWay, sendMix } from '@/app/_parts/send-mix';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { sprayedBenches } from '@/shared/mix/spraying-told';
import { AfterList } from '../after-list';
import styles from './do.module.css';
import type { Act } from './frame';

/** A finished mix: on its way, kept on this device until the network is back, or on record. */
export function SentScreen({ mix, act }: { mix: MixProgress; act: Act }) {
  const router = useRouter();
  const sending = isUnderWay(mix.commandId);
  const application = mix.finished?.application ?? null;
  useEffect(() => {
    if (application !== null) router.replace(`/mix/done/${encodeURIComponent(application)}`);
  }, [application, router]);
  return (
    <div className={styles.gate}>
      <h1>{mix.plan.recipe.name}</h1>
      {mix.state === 'to-send' ? (
        <>
          <p role="status" className={styles.why} data-grave={sending ? undefined : ''}>
            <b>{sending ? 'On its way.' : 'Not sent yet: kept on this device.'}</b> It is sent by itself once there is a
            network, from any page of this shop that is open here. It becomes one record, however often it is sent.
          </p>
          <button type="button" data-main="" disabled={sending} onClick={() => void sendMix(mix.commandId)}>
            Send it now
          </button>
          <button type="button" disabled={sending} onClick={() => act({ do: 'correct' }, { do: 'go', to: 'finish' })}>
            Put something right first
          </button>
        </>
      ) : (
        <p role="status" className={styles.why} data-good="">
          {application === null
            ? 'This mix is on record already, with what was sent first. Correct the record itself if it is wrong.'
            : 'On record.'}
        </p>
      )}
      {mix.state === 'sent' && application !== null && (
        <a className="button" data-main="" href={`/mix/done/${encodeURIComponent(application)}`}>
          What it came to
        </a>
      )}
      {mix.state === 'to-send' && (
        <AfterList
          benches={mix.plan.shopBenches.filter(({ id }) => sprayedBenches(mix).includes(id))}
          leftover={mix.answers.leftover.trim() || null}
        />
      )}
      <a className="button" href="/today">
        Today: which benches are closed
      </a>
    </div>
  );
}
