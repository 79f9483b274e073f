'use client';

import { useState } from 'react';
import { dropMix } from '@/app/_parts/kept-mixes';
import type { MixPlan } from '@/shared/mix/mix-plan';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { whereAt } from '@/shared/mix/where-at';
import { instantOf } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import styles from './do.module.css';

type GateProps = {
  plan: MixPlan | null;
  isDone: boolean;
  told: string | null;
  /** What was begun of this mix on this device. */
  kept: MixProgress[];
  goOn: (commandId: string) => void;
  begin: (plan: MixPlan) => void;
};

/** The way into a mix: on with what was begun, or from the beginning. */
export function Gate({ plan, isDone, told, kept, goOn, begin }: GateProps) {
  return (
    <div className={styles.gate}>
      <h1>{plan?.recipe.name ?? kept[0]?.plan.recipe.name ?? 'Mix'}</h1>
      {told !== null && <p role="alert">{told}</p>}
      {isDone && (
        <p role="alert">
          <b>This spraying is on record already.</b> Begin it only if it is really mixed a second time.
        </p>
      )}
      {kept.map((mix) => (
        <Begun key={mix.commandId} mix={mix} beside={plan} goOn={goOn} />
      ))}
      {plan && (
        <>
          <p>
            {plan.sprayText} in {plan.fills === 1 ? 'one fill' : `${plan.fills} fills of ${plan.fillText}`} for{' '}
            {plan.plantsText ?? (plan.benches.map(({ name }) => name).join(', ') || 'whatever you name at the end')}.
          </p>
          <button type="button" data-main={kept.length === 0 ? '' : undefined} onClick={() => begin(plan)}>
            {kept.length === 0 ? 'Begin' : 'Begin anew beside it'}
          </button>
          <p className="soft">
            Everything it takes is on this device: go on where there is no network, and what is noted is sent when it is
            back.
          </p>
          <a className="button" href={`/mix/sheet?${plan.query}`}>
            The whole sheet
          </a>
        </>
      )}
      <a className="button" href="/mix">
        Another mix
      </a>
    </div>
  );
}

type BegunProps = { mix: MixProgress; beside: MixPlan | null; goOn: (commandId: string) => void };

function Begun({ mix, beside, goOn }: BegunProps) {
  const [asked, setAsked] = useState(false);
  const { commandId, plan, state } = mix;
  const today = beside ? dayOf(beside.zone, instantOf(beside.asOf)) : null;
  const begunAt = showClock(instantOf(mix.begunAt), plan.zone, today);
  return (
    <section className={styles.begun} aria-label={`Begun ${begunAt}`}>
      <p>
        {state === 'mixing' && (
          <>
            You were <b>{whereAt(mix)}</b>, begun {begunAt}.
          </>
        )}
        {state === 'to-send' && 'Finished, and not sent yet: it is kept on this device.'}
        {state === 'sent' && 'This mix is on record.'}
      </p>
      <button type="button" data-main="" onClick={() => goOn(commandId)}>
        {state === 'mixing' ? 'Go on' : 'Open it'}
      </button>
      {state !== 'sent' && mix.sprayingSince !== null && (
        <p className="soft">
          Spraying was begun, so it is not thrown away: finish it, or say on Today what became of it.
        </p>
      )}
      {state !== 'sent' &&
        mix.sprayingSince === null &&
        (asked ? (
          <>
            <p>What was noted of it here is gone then, and nothing of it gets into the books.</p>
            <button type="button" onClick={() => dropMix(commandId)}>
              Yes, throw it away
            </button>
          </>
        ) : (
          <button type="button" onClick={() => setAsked(true)}>
            Throw it away
          </button>
        ))}
    </section>
  );
}
