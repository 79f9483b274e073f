'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import field from '../_parts/form-field.module.css';
import { freshId } from '../_parts/use-command-id';
import { useHalfTyped } from '../_parts/use-half-typed';
import { HowFar } from './how-far';
import { ImportChanges } from './import-changes';
import { RefusedFile } from './refused-file';
import type { Refused, Sure } from './send-in-steps';
import { askPreview, type Imported, type Preview, type Progress, sendImport, stopImport } from './send-shop-file';
import styles from './setup.module.css';
import { ShowShopButton } from './show-shop-button';

type Shop = { id: string; name: string };
type Step =
  | { at: 'choosing' }
  | { at: 'refused'; refused: Refused }
  | { at: 'previewed'; preview: Preview; sent: { into: string; text: string; commandId: string }; refused?: Refused }
  | { at: 'done'; imported: Imported; name: string };

/**
 * Brings a shop file in: choose or paste it, see what would change, then confirm. Nothing changes before that, and then
 * all of it does or nothing.
 */
export function ImportShop({ shown }: { shown: Shop | null }) {
  const [step, setStep] = useState<Step>({ at: 'choosing' });
  const [progress, setProgress] = useState<Progress | null>(null);
  const [isStopping, setStopping] = useState(false);
  const stop = useRef<(() => void) | null>(null);
  const router = useRouter();
  const isBusy = progress !== null;

  /** Shows how far it is until there is an answer. */
  const whileShown = async <T,>(how: () => void, work: () => Promise<T>): Promise<T> => {
    stop.current = how;
    setProgress({ step: 'sending', share: 0 });
    const answer = await work();
    stop.current = null;
    setProgress(null);
    setStopping(false);
    return answer;
  };

  const preview = async (into: string, text: string) => {
    const breakOff = new AbortController();
    const ask = () => askPreview(into, text, setProgress, breakOff.signal);
    const answer = await whileShown(() => breakOff.abort(), ask);
    const sent = { into, text, commandId: freshId() };
    if (answer?.ok) setStep({ at: 'previewed', preview: answer.value, sent });
    else setStep(answer ? { at: 'refused', refused: answer.refused } : { at: 'choosing' });
  };

  const confirm = async (from: Extract<Step, { at: 'previewed' }>, sure: Sure | null = null) => {
    const { fingerprint, name } = from.preview;
    const send = () => sendImport({ ...from.sent, fingerprint }, setProgress, sure);
    const answer = await whileShown(() => void stopImport(from.sent.commandId, () => stop.current === null), send);
    if (answer?.ok) setStep({ at: 'done', imported: answer.value, name });
    else setStep(answer ? { ...from, refused: answer.refused } : from);
    if (answer?.ok) router.refresh();
  };

  return (
    <>
      <ChooseFile shown={shown} isBusy={isBusy} isDone={step.at === 'done'} onPreview={preview} />
      {progress && (
        <HowFarFile
          {...{ progress, isStopping }}
          onStop={() => {
            setStopping(true);
            stop.current?.();
          }}
        />
      )}
      <div aria-live="polite">
        {step.at === 'refused' && <RefusedFile refused={step.refused} />}
        {step.at === 'previewed' && (
          <>
            <ImportChanges
              preview={step.preview}
              isNew={step.sent.into === 'new'}
              isBusy={isBusy}
              onConfirm={() => confirm(step)}
              onCancel={() => setStep({ at: 'choosing' })}
            />
            {step.refused && (
              <RefusedFile refused={step.refused} isBusy={isBusy} onSure={(sure) => confirm(step, sure)} />
            )}
          </>
        )}
        {step.at === 'done' && <Done step={step} isShown={step.imported.shopId === shown?.id} />}
      </div>
    </>
  );
}

type HowFarFileProps = { progress: Progress; isStopping: boolean; onStop: () => void };

/** Nothing is stopped any more once it is being saved: then all of it goes in. */
function HowFarFile({ progress, isStopping, onStop }: HowFarFileProps) {
  if (isStopping && progress.step !== 'saving') return <HowFar words="Stopping it." share={undefined} onStop={null} />;
  switch (progress.step) {
    case 'sending':
      return <HowFar words="Sending the file." share={progress.share} onStop={onStop} />;
    case 'reading':
      return <HowFar words="Reading it and comparing it with the shop." share={undefined} onStop={onStop} />;
    case 'saving':
      return <HowFar words="Saving all of it." share={undefined} onStop={null} />;
  }
}

function Done({ step, isShown }: { step: Extract<Step, { at: 'done' }>; isShown: boolean }) {
  const { imported, name } = step;
  return (
    <div className={field.said} data-good="">
      <p>
        {name}: {imported.added} added, {imported.changed} changed. {isShown && <a href="/today">Go to today</a>}
      </p>
      {!isShown && (
        <>
          <p>This device still works in the shop that its head names.</p>
          <ShowShopButton shop={{ id: imported.shopId, name }} />
        </>
      )}
    </div>
  );
}

type ChooseFileProps = {
  shown: Shop | null;
  isBusy: boolean;
  isDone: boolean;
  onPreview: (into: string, text: string) => void;
};

function ChooseFile({ shown, isBusy, isDone, onPreview }: ChooseFileProps) {
  const form = useRef<HTMLFormElement>(null);
  const [missing, setMissing] = useState(false);
  useHalfTyped(form, 'import-shop', isDone);

  const send = async (sent: FormData) => {
    const file = sent.get('file');
    const chosen = file instanceof File && file.size > 0 ? await file.text() : '';
    const text = chosen || String(sent.get('text') ?? '');
    setMissing(text.trim() === '');
    if (text.trim() !== '') onPreview(String(sent.get('into') ?? 'new'), text);
  };

  return (
    <form
      ref={form}
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        send(new FormData(event.currentTarget));
      }}
    >
      <noscript>
        <p>Bringing a file in needs scripts in this browser. Without them, use the shop command.</p>
      </noscript>
      <div>
        <label htmlFor="file">Choose a file</label>
        <input id="file" name="file" type="file" accept=".json,application/json" />
      </div>
      <div>
        <label htmlFor="text">or paste it</label>
        <textarea
          id="text"
          name="text"
          rows={3}
          spellCheck={false}
          aria-invalid={missing}
          aria-describedby="text-told"
        />
        <p id="text-told" className={missing ? field.fault : field.hint}>
          {missing
            ? 'There is no file yet. Choose one, or paste its text here.'
            : 'A file saved from here, or one written by hand. What would change is shown first.'}
        </p>
      </div>
      <fieldset>
        <legend>Bring it into</legend>
        <label className="tick">
          <input type="radio" name="into" value="new" defaultChecked />a new shop
        </label>
        {shown && (
          <label className="tick">
            <input type="radio" name="into" value={shown.id} />
            {shown.name}, the shop of this device
          </label>
        )}
      </fieldset>
      <p>
        <button type="submit" data-main="" disabled={isBusy}>
          {isBusy ? 'Reading…' : 'Show what would change'}
        </button>
      </p>
    </form>
  );
}
