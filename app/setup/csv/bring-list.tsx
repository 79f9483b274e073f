'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { freshId } from '../../_parts/use-command-id';
import { RefusedFile } from '../refused-file';
import type { Refused, Sure } from '../send-in-steps';
import { ChooseList, type Chosen } from './choose-list';
import styles from './csv.module.css';
import { grouped, HowFarList } from './how-far';
import { LookedAt } from './looked-at';
import { askPreview, type Imported, type Preview, type Progress, type Said, sendImport } from './send-list';

type Shop = { id: string; name: string };
type Step =
  | { at: 'choosing' }
  | { at: 'looked'; preview: Preview; said: Said; commandId: string }
  | { at: 'done'; imported: Imported; list: string };

const NOTHING_SAID: Said = { columns: null, decimals: null, dayOrder: null, createSuppliers: false };

/**
 * Brings a list in: choose or paste it, see what would change and what must be put right, answer what the file leaves
 * open, then confirm. Nothing changes before that, and then all of it does or nothing.
 */
export function BringList({ shop }: { shop: Shop }) {
  const [step, setStep] = useState<Step>({ at: 'choosing' });
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [progress, setProgress] = useState<Progress | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const stop = useRef<AbortController | null>(null);
  const router = useRouter();

  const look = async (at: Chosen, said: Said) => {
    const breakOff = new AbortController();
    stop.current = breakOff;
    setChosen(at);
    setRefused(null);
    setProgress({ step: 'sending', share: 0 });
    const { list, text } = at;
    const answer = await askPreview({ shop: shop.id, list, text, ...said }, setProgress, breakOff.signal);
    stop.current = null;
    setProgress(null);
    if (answer?.ok) setStep({ at: 'looked', preview: answer.value, said, commandId: freshId() });
    else if (answer) setRefused(answer.refused);
  };

  const confirm = async ({ preview, said, commandId }: Extract<Step, { at: 'looked' }>, sure: Sure | null = null) => {
    if (!chosen) return;
    setRefused(null);
    setProgress({ step: 'sending', share: 0 });
    const { list, text } = chosen;
    const { fingerprint } = preview;
    const answer = await sendImport({ shop: shop.id, list, text, ...said, commandId, fingerprint }, setProgress, sure);
    setProgress(null);
    if (answer?.ok) setStep({ at: 'done', imported: answer.value, list });
    else if (answer) setRefused(answer.refused);
    if (answer?.ok) router.refresh();
  };

  return (
    <>
      <ChooseList
        isBusy={progress !== null}
        isDone={step.at === 'done'}
        onChosen={(next) => look(next, NOTHING_SAID)}
      />
      {progress && <HowFarList progress={progress} onStop={stop.current && (() => stop.current?.abort())} />}
      {refused && (
        <RefusedFile
          refused={refused}
          isBusy={progress !== null}
          onSure={(sure) => step.at === 'looked' && confirm(step, sure)}
        />
      )}
      {step.at === 'looked' && chosen && (
        <LookedAt
          key={step.commandId}
          {...{ chosen, preview: step.preview, said: step.said, isBusy: progress !== null }}
          onLookAgain={(said) => look(chosen, said)}
          onConfirm={() => confirm(step)}
          onLeave={() => {
            setStep({ at: 'choosing' });
            setRefused(null);
          }}
        />
      )}
      <div aria-live="polite">{step.at === 'done' && <Done imported={step.imported} list={step.list} />}</div>
    </>
  );
}

function Done({ imported: { added, changed, suppliers }, list }: { imported: Imported; list: string }) {
  const also = suppliers === 0 ? '' : ` ${suppliers} ${suppliers === 1 ? 'supplier' : 'suppliers'} made.`;
  return (
    <p className={styles.said} data-good="">
      The {list} are in: {grouped(added)} added, {grouped(changed)} changed.{also}{' '}
      <a href="/shelf">Look at the shelf</a>
    </p>
  );
}
