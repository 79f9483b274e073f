'use client';

import type { ReactNode } from 'react';
import { FormAnswer } from './form-field';
import { HiddenFields } from './hidden-fields';
import styles from './thing-form.module.css';
import type { ThingForm as Form } from './use-thing-form';

type ThingFormProps<T> = {
  form: Form<T>;
  /** What the button says. */
  save: string;
  /** Where to go without saving. */
  back: string;
  children: ReactNode;
};

/** The frame of a form about one thing: its hidden fields, what came of it, and the buttons. */
export function ThingForm<T>({ form, save, back, children }: ThingFormProps<T>) {
  return (
    <form {...form.form} className={styles.form}>
      <HiddenFields of={form.hidden} />
      {children}
      <FormAnswer state={form.state} />
      <p className={styles.buttons}>
        <button type="submit" data-main="" disabled={form.isSending}>
          {form.isSending ? 'Saving…' : save}
        </button>
        <a className="button" href={back}>
          Leave it
        </a>
        {form.isTouched && (
          <button type="button" onClick={form.forget}>
            Begin again
          </button>
        )}
      </p>
    </form>
  );
}
