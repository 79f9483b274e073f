'use client';

import { type FormEvent, useId } from 'react';
import { type EarlierAsked, LONGEST_SURE_REASON, SURE_FIELDS } from '@/shared/forms/earlier-asked';
import styles from './earlier-opening.module.css';
import { HiddenFields } from './hidden-fields';

/** Asks once more, within a form that would open a bench earlier: which benches, why it is certain, and a tick. */
function EarlierOpening({ asked: { token, openings, reason } }: { asked: EarlierAsked }) {
  const id = useId();
  return (
    <fieldset className={styles.asked}>
      <legend>▲ A bench would open earlier</legend>
      <ul>
        {openings.map((opening) => (
          <li key={opening}>{opening}</li>
        ))}
      </ul>
      <HiddenFields of={{ [SURE_FIELDS.token]: token }} />
      <label htmlFor={id}>How you know that people may go in</label>
      <input
        id={id}
        name={SURE_FIELDS.reason}
        defaultValue={reason}
        maxLength={LONGEST_SURE_REASON}
        autoComplete="off"
        aria-describedby={`${id}-hint`}
      />
      <p id={`${id}-hint`} className="soft small">
        Such as: asked Ada, it was never sprayed. It goes on record with your name and the time.
      </p>
      <label className="tick">
        <input type="checkbox" name={SURE_FIELDS.sure} value="yes" />I am certain. Open it earlier.
      </label>
      <p className="small">Write how you know, tick this, and press the button again. Until then nothing changes.</p>
    </fieldset>
  );
}

type ConfirmProps = { asked: EarlierAsked; isBusy: boolean; send: string; onConfirm: (reason: string) => void };

/** Asks once more, within a form that brings a great many bottles, whether the count is right. */
function ManyBottles({ asked: { token, openings } }: { asked: EarlierAsked }) {
  return (
    <fieldset className={styles.asked}>
      <legend>▲ A great many bottles</legend>
      <ul>
        {openings.map((opening) => (
          <li key={opening}>{opening}</li>
        ))}
      </ul>
      <HiddenFields of={{ [SURE_FIELDS.token]: token, [SURE_FIELDS.reason]: 'counted again' }} />
      <label className="tick">
        <input type="checkbox" name={SURE_FIELDS.sure} value="yes" />
        The count is right.
      </label>
      <p className="small">Tick this and press the button again, or mend the count. Until then nothing changes.</p>
    </fieldset>
  );
}

/** Asks once more, within a form, what a person has to be certain of. */
export const AskedAgain = ({ asked }: { asked: EarlierAsked }) =>
  asked.about === 'bottles' ? <ManyBottles asked={asked} /> : <EarlierOpening asked={asked} />;

/** The same where there is no form around it, such as for a file. */
export function ConfirmEarlier({ asked, isBusy, send: label, onConfirm }: ConfirmProps) {
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const said = new FormData(event.currentTarget);
    const reason = String(said.get(SURE_FIELDS.reason) ?? '').trim();
    if (reason !== '' && said.has(SURE_FIELDS.sure)) onConfirm(reason);
  };
  return (
    <form onSubmit={send}>
      <AskedAgain asked={asked} />
      <button type="submit" disabled={isBusy}>
        {label}
      </button>
    </form>
  );
}
