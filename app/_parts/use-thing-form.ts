'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, startTransition, useActionState, useEffect } from 'react';
import type { ThingOpened } from '@/lib/views/thing-form';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import type { Fields } from '@/shared/forms/rows';
import { useCommandId } from './use-command-id';
import { type Draft, useDraft } from './use-draft';

type ThingFormSetup<T> = {
  /** The kind of thing, for the key under which a half-typed form is kept. */
  what: string;
  thing: ThingOpened;
  action: (state: FormState, form: FormData) => Promise<FormState>;
  initial: T;
  /** The draft in what was sent, for a page without scripts. */
  inFields: (fields: Fields) => T;
};

export type ThingForm<T> = Draft<T> & {
  state: FormState;
  isSending: boolean;
  /** What goes onto the form element. */
  form: { action: (form: FormData) => void; onSubmit: (event: FormEvent<HTMLFormElement>) => void };
  hidden: Record<'commandId' | 'shop' | 'id' | 'standing', string>;
};

/** A form about one thing of the shop: what is typed, sending it, and where to go once it is saved. */
export function useThingForm<T>({ what, thing, action, initial, inFields }: ThingFormSetup<T>): ThingForm<T> {
  const [state, send, isSending] = useActionState(action, IDLE);
  const refused = state.status === 'invalid' || state.status === 'refused' ? state.typed : null;
  const typed = refused && Object.keys(refused).length > 0 ? inFields(refused as Fields) : initial;
  const draft = useDraft(`${what} ${thing.shop} ${thing.id}`, typed, thing.standing);
  const commandId = useCommandId(state.status === 'done' && state) || thing.commandId;
  const router = useRouter();
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a form that was just saved is left, and once.
  useEffect(() => {
    if (state.status !== 'done') return;
    draft.forget();
    if (state.link) router.push(state.link);
  }, [state]);
  return {
    ...draft,
    state,
    isSending,
    form: {
      action: send,
      // Sent by hand, since a form that React sends is emptied afterwards, and its selects forget what was chosen.
      onSubmit: (event) => {
        event.preventDefault();
        const sent = new FormData(event.currentTarget);
        startTransition(() => send(sent));
      },
    },
    hidden: { commandId, shop: thing.shop, id: thing.id, standing: draft.standing },
  };
}
