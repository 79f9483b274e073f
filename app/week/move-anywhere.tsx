'use client';

import { useActionState, useEffect, useRef, useState } from 'react';
import type { MovePreview } from '@/lib/views/move-preview';
import type { SprayingMove } from '@/lib/views/spraying-move';
import { IDLE } from '@/shared/forms/form-state';
import { MINUTES_IN_DAY, readClockTime, showClockTime } from '@/shared/time/clock-time';
import { addDays, type Day, readDay } from '@/shared/time/day';
import { FlagLines } from '../_parts/flag-lines';
import { FormAnswer, FormField } from '../_parts/form-field';
import { useAsked } from '../_parts/use-asked';
import { moveSprayingAction } from './actions';
import { onMoveAsked } from './move-asked';
import { MoveFields } from './move-fields';
import styles from './move-forms.module.css';

type MoveAnywhereProps = { move: SprayingMove; from: Day; today: Day };

const QUARTER = 15;

/** Moves a spraying to any day and time, and says at once what that does to reopening, cost and stock. */
export function MoveAnywhere({ move, from, today }: MoveAnywhereProps) {
  const [state, send, isSending] = useActionState(moveSprayingAction, IDLE);
  const [place, setPlace] = useState({ day: move.day as string, at: move.at });
  const details = useRef<HTMLDetailsElement>(null);
  const isElsewhere = place.day !== move.day || place.at !== move.at;
  const preview = useAsked<MovePreview>(isElsewhere ? { address: previewOf(move, place) } : null);
  useEffect(
    () =>
      onMoveAsked(move, (day) => {
        if (details.current) details.current.open = true;
        details.current?.querySelector<HTMLInputElement>('input[name="to"]')?.focus();
        setPlace((now) => ({ ...now, day: day < today ? today : day }));
      }),
    [move, today],
  );
  const byDays = (days: number) => setPlace((now) => ({ ...now, day: dayBy(now.day, days) }));
  const byMinutes = (minutes: number) => setPlace((now) => ({ ...now, at: timeBy(now.at, minutes) }));
  return (
    <details ref={details} className={styles.anywhere}>
      <summary>Move it elsewhere</summary>
      <form action={send} className={styles.form}>
        <MoveFields move={move} commandId={move.commandId} from={from} />
        <div className={styles.place}>
          <FormField state={state} name="to" id={`to-${move.program}-${move.on}`} label="Day">
            {(wiring) => (
              <input
                {...wiring}
                type="date"
                min={today}
                value={place.day}
                onChange={({ target }) => setPlace((now) => ({ ...now, day: target.value }))}
              />
            )}
          </FormField>
          <FormField state={state} name="at" id={`at-${move.program}-${move.on}`} label="Starts at">
            {(wiring) => (
              <input
                {...wiring}
                type="time"
                value={place.at}
                onChange={({ target }) => setPlace((now) => ({ ...now, at: target.value }))}
              />
            )}
          </FormField>
          <p className={styles.steps}>
            <button type="button" onClick={() => byDays(-1)} disabled={place.day <= today}>
              A day earlier
            </button>
            <button type="button" onClick={() => byDays(1)}>
              A day later
            </button>
            <button type="button" onClick={() => byMinutes(-QUARTER)}>
              15 min earlier
            </button>
            <button type="button" onClick={() => byMinutes(QUARTER)}>
              15 min later
            </button>
          </p>
        </div>
        <Effects preview={preview} />
        <FormAnswer state={state} />
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Moving…' : 'Move it there'}
        </button>
      </form>
    </details>
  );
}

/** What the move would do, as soon as the shop has said so. */
function Effects({ preview }: { preview: MovePreview | 'asking' | 'away' | null }) {
  return (
    <div aria-live="polite" className={styles.effects}>
      {preview === 'asking' && <p className="soft">Looking at what that does…</p>}
      {preview === 'away' && <p>The shop does not say what that does. It can be moved all the same.</p>}
      {typeof preview === 'object' && preview !== null && (
        <>
          <p>
            <b>On {preview.where}:</b>
          </p>
          <ul>
            {preview.effects.map((effect) => (
              <li key={effect}>{effect}</li>
            ))}
          </ul>
          <FlagLines flags={preview.flags} />
        </>
      )}
    </div>
  );
}

const previewOf = ({ shop, program, on }: SprayingMove, { day, at }: { day: string; at: string }): string =>
  `/week/move?${new URLSearchParams({ shop, program, on, to: day, at })}`;

function dayBy(text: string, days: number): string {
  const day = readDay(text);
  return day.ok ? addDays(day.value, days) : text;
}

/** Stays in its day: another day is another button. */
function timeBy(text: string, minutes: number): string {
  const at = readClockTime(text);
  if (!at.ok) return text;
  return showClockTime(Math.min(Math.max(at.value + minutes, 0), MINUTES_IN_DAY - 1));
}
