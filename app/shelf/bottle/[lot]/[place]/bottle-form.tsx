'use client';

import type { ReactNode } from 'react';
import type { FormState } from '@/shared/forms/form-state';
import { FormAnswer } from '../../../../_parts/form-field';
import { HiddenFields } from '../../../../_parts/hidden-fields';
import { type FormAction, useSent } from '../../../../_parts/use-sent';
import styles from './bottle-page.module.css';

/** Which bottle a form is about, and the id of its command in a browser that runs no scripts. */
export type About = { shopId: string; lotId: string; place: number; formId: string };

type BottleFormProps = {
  about: About;
  action: FormAction;
  /** Tells this form from the others of the page. */
  name: string;
  /** What opens it, and what sends it. */
  title: string;
  button: string;
  /** Whether it can no longer be sent, because it was done: then only its answer stays. */
  isOver?: boolean;
  children: (state: FormState) => ReactNode;
};

/** One thing that can happen to a bottle: closed until it is wanted, then one step. */
export function BottleForm({ about, action, name, title, button, isOver, children }: BottleFormProps) {
  const { state, send, isSending, form, commandId } = useSent(action, `${name} ${about.lotId} ${about.place}`);
  if (isOver) return state.status === 'idle' ? null : <FormAnswer state={state} />;
  return (
    <details className={styles.deed} open={state.status !== 'idle'}>
      <summary>{title}</summary>
      <form ref={form} action={send} className={styles.form}>
        <AboutFields about={about} commandId={commandId} />
        {children(state)}
        <FormAnswer state={state} />
        <p>
          <button type="submit" disabled={isSending}>
            {isSending ? 'Writing it down…' : button}
          </button>
        </p>
      </form>
    </details>
  );
}

/** What every form about a bottle carries unseen. */
export function AboutFields({ about, commandId }: { about: About; commandId: string }) {
  return (
    <HiddenFields
      of={{ commandId: commandId || about.formId, shop: about.shopId, lotId: about.lotId, place: about.place }}
    />
  );
}
