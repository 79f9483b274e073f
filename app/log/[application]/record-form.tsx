'use client';

import type { AboutRecord } from '@/lib/views/record';
import type { FormState } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { type FormAction, useSent } from '../../_parts/use-sent';
import { confirmRecordAction, restoreRecordAction, withdrawRecordAction } from './actions';
import styles from './record.module.css';

/** What every form about a record carries unseen. */
export function AboutRecordFields({ about, commandId }: { about: AboutRecord; commandId: string }) {
  return (
    <HiddenFields
      of={{
        ...{ commandId: commandId || about.formId, shop: about.shopId },
        ...{ application: about.application, version: about.version },
      }}
    />
  );
}

type OneReasonProps = {
  about: AboutRecord;
  action: FormAction;
  name: string;
  label: string;
  hint: string;
  button: string;
};

/** One step that wants nothing but a reason. */
function OneReason({ about, action, name, label, hint, button }: OneReasonProps) {
  const { state, send, isSending, form, commandId } = useSent(action, `${name} ${about.application}`);
  return (
    <form ref={form} action={send} className={styles.form}>
      <AboutRecordFields about={about} commandId={commandId} />
      <Reason state={state} id={`${name}-reason`} label={label} hint={hint} />
      <FormAnswer state={state} />
      <p>
        <button type="submit" disabled={isSending}>
          {isSending ? 'Writing it down…' : button}
        </button>
      </p>
    </form>
  );
}

type ReasonProps = { state: FormState; id: string; label: string; hint: string };

export function Reason({ state, id, label, hint }: ReasonProps) {
  return (
    <FormField state={state} name="reason" id={id} label={label} hint={hint}>
      {(wiring) => <input key={state.status} {...wiring} defaultValue={typedIn(state, 'reason')} autoComplete="off" />}
    </FormField>
  );
}

/** The second word that an amendment needs before it opens a bench earlier. */
export function ConfirmForm({ about }: { about: AboutRecord }) {
  return (
    <OneReason
      about={about}
      action={confirmRecordAction}
      name="confirm"
      label="What makes it certain"
      hint="Such as: asked Ada, who sprayed. It stays beside the record."
      button="It is right: let it count"
    />
  );
}

/** Withdraws a record, or lets a withdrawn one count again. */
export function WithdrawForm({ about, isWithdrawn }: { about: AboutRecord; isWithdrawn: boolean }) {
  return (
    <details className={styles.deed}>
      <summary>{isWithdrawn ? 'Let it count again' : 'It was entered in error'}</summary>
      <p className="soft">
        {isWithdrawn
          ? 'The record counts again from then on, at once.'
          : 'It stays in the log and counts nowhere once that is confirmed. What was drawn from bottles stays drawn: take that back on the bottle.'}
      </p>
      <OneReason
        about={about}
        action={isWithdrawn ? restoreRecordAction : withdrawRecordAction}
        name={isWithdrawn ? 'restore' : 'withdraw'}
        label="Why"
        hint="Such as: entered twice. It stays beside the record."
        button={isWithdrawn ? 'Let it count again' : 'Withdraw this record'}
      />
    </details>
  );
}
