'use client';

import { ConfirmEarlier } from '@/app/_parts/earlier-opening';
import { sendMix } from '@/app/_parts/send-mix';
import type { FinishFault } from '@/shared/mix/finish-body';
import { fillsMixed } from '@/shared/mix/finish-body';
import { productIn } from '@/shared/mix/mix-plan';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { pourKey } from '@/shared/mix/mix-screens';
import { pouredInAll } from '@/shared/mix/poured-so-far';
import styles from './do.module.css';
import type { Act } from './frame';

type FaultListProps = { mix: MixProgress; act: Act; faults: FinishFault[]; refusal: MixProgress['refusal'] };

/** What stands in the way of the record, each with the way to where it is put right. */
export function FaultList({ mix, act, faults, refusal }: FaultListProps) {
  if (faults.length === 0 && !refusal) return null;
  const elsewhere = faults.filter(({ screen }) => screen !== 'finish');
  const asked = refusal?.code === 'opens-earlier' ? refusal.confirm : null;
  const isDone = refusal?.code === 'already-done';
  return (
    <div role="alert" className={styles.wrong}>
      {refusal && (
        <p>
          <b>Nothing was written yet.</b> {refusal.message}
        </p>
      )}
      {asked === null ? <Refused mix={mix} act={act} /> : <MayOpen mix={mix} act={act} token={asked} />}
      {isDone && (
        <button type="button" onClick={() => act({ do: 'apart' })}>
          It was sprayed a second time: record it beside that one
        </button>
      )}
      {elsewhere.map(({ screen, path, message }) => (
        <p key={`${screen} ${path} ${message}`}>
          {message} <Open act={act} screen={screen} />
        </p>
      ))}
      {faults.length > elsewhere.length && <p>Something is still asked below.</p>}
    </div>
  );
}

/** Whether a bench may open earlier is answered here: the mix and all that was typed stay as they are. */
function MayOpen({ mix, act, token }: { mix: MixProgress; act: Act; token: string }) {
  const openings = (mix.refusal?.faults ?? []).map(({ message }) => message);
  const confirm = (reason: string) => {
    act({ do: 'sure', token, reason });
    void sendMix(mix.commandId);
  };
  return (
    <ConfirmEarlier
      asked={{ token, openings, reason: '' }}
      isBusy={false}
      send="Write it into the record all the same"
      onConfirm={confirm}
    />
  );
}

function Refused({ mix, act }: { mix: MixProgress; act: Act }) {
  return mix.refusal?.faults.map(({ path, message }) => {
    const product = productAt(mix, path);
    return (
      <p key={path}>
        {product && <b>{productIn(mix.plan, product).name}: </b>}
        {message} {product && <Open act={act} screen={pourKey(0, product)} />}
      </p>
    );
  });
}

const Open = ({ act, screen }: { act: Act; screen: string }) => (
  <button type="button" onClick={() => act({ do: 'go', to: screen })}>
    Go there
  </button>
);

/** The product that a refusal is about, by its place in what was sent. */
function productAt(mix: MixProgress, path: string): string | null {
  const at = /^poured[.[](\d+)/.exec(path)?.[1];
  const poured = at === undefined ? null : pouredInAll(mix, fillsMixed(mix));
  return poured?.ok ? (poured.value[Number(at)]?.product.id ?? null) : null;
}
