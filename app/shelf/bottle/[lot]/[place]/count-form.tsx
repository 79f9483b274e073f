'use client';

import { useEffect, useState } from 'react';
import type { BottleSeen } from '@/lib/views/bottle-seen';
import { COUNT_REASONS } from '@/shared/forms/bottle';
import { needsReason, percentOf } from '@/shared/measure/level';
import { type Kept, readLevel, stockText } from '@/shared/measure/read-stock';
import { showStock, type Units } from '@/shared/measure/show';
import { type Stock, stock } from '@/shared/quantity/amounts';
import { FormAnswer, FormField, typedIn } from '../../../../_parts/form-field';
import { LevelBottle } from '../../../../_parts/level-bottle';
import { useSent } from '../../../../_parts/use-sent';
import { type About, AboutFields } from './bottle-form';
import styles from './bottle-page.module.css';
import { countBottleAction } from './stock-actions';

type CountFormProps = {
  about: About;
  bottle: BottleSeen;
  kept: Kept;
  pack: string;
  size: Stock;
  /** What the ledger says, after how many movements. */
  told: Stock;
  movements: number;
  units: Units;
};

/**
 * What a person sees in the bottle against what the ledger says. The picture, the keys and the typed amount are one
 * value; nothing is written down before the button.
 */
export function CountForm({ about, bottle, kept, pack, size, told, movements, units }: CountFormProps) {
  const { state, send, isSending, commandId } = useSent(countBottleAction, `count ${about.lotId} ${about.place}`);
  const [typed, setTyped] = useState<string | null>(null);
  useEffect(() => {
    if (state.status === 'done') setTyped(null);
  }, [state]);
  // Without scripts the reason has to be there from the first.
  const isAlive = commandId !== '';
  const text = typed ?? typedIn(state, 'found', levelText(told, size, kept));
  const read = readLevel(text, size, kept);
  const level = read.ok ? read.value : told;
  const shown = (amount: Stock) => showStock(amount, kept.form, units);
  return (
    <form action={send} className={styles.count}>
      <AboutFields about={about} commandId={commandId} />
      <input type="hidden" name="seen" value={movements} />
      <LevelBottle
        bottle={bottle}
        size={size}
        told={told}
        level={level}
        onLevel={(seen) => setTyped(levelText(seen, size, kept))}
        shown={shown}
        inWords={`${shown(level)}, ${percentOf(level, size)} % of ${pack}`}
        label="Level in the bottle"
      />
      <div className={styles.form}>
        <FormField
          state={state}
          name="found"
          label="What you see in it"
          hint="Drag the level in the picture, or write it: 600 mL, 1/3, 40 %, empty, full."
        >
          {(wiring) => (
            <input {...wiring} value={text} onChange={(event) => setTyped(event.target.value)} autoComplete="off" />
          )}
        </FormField>
        <p aria-live="polite">{read.ok ? difference(level, told, shown) : ''}</p>
        {(level !== told || !isAlive) && (
          <CountReason key={state.status} state={state} isNeeded={needsReason(level, told, size)} />
        )}
        <FormAnswer state={state} />
        <p>
          <button type="submit" data-main="" disabled={isSending}>
            {isSending ? 'Writing it down…' : 'This is what I see'}
          </button>
        </p>
      </div>
    </form>
  );
}

function CountReason({ state, isNeeded }: { state: Parameters<typeof typedIn>[0]; isNeeded: boolean }) {
  return (
    <>
      <FormField
        state={state}
        name="why"
        label={isNeeded ? 'What may have become of it' : 'What may have become of it (if you know)'}
      >
        {(wiring) => (
          <select {...wiring} defaultValue={typedIn(state, 'why')}>
            <option value="">not said</option>
            {[...COUNT_REASONS, 'other'].map((why) => (
              <option key={why} value={why}>
                {why}
              </option>
            ))}
          </select>
        )}
      </FormField>
      <FormField state={state} name="words" label="In your words">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'words')} />}
      </FormField>
    </>
  );
}

const levelText = (level: Stock, size: Stock, { form }: Kept): string =>
  level === 0 ? 'empty' : level === size ? 'full' : stockText(level, form);

function difference(level: Stock, told: Stock, shown: (amount: Stock) => string): string {
  if (level === told) return `That is what the ledger says, ${shown(told)}.`;
  const [by, word] = level < told ? [told - level, 'less'] : [level - told, 'more'];
  return `${shown(stock(by))} ${word} than the ledger says, ${shown(told)}.`;
}
