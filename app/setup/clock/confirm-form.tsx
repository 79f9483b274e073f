'use client';

import { useActionState } from 'react';
import type { ClockScreen } from '@/lib/views/clock-screen';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { confirmClockAction } from './actions';

/** One button: that is the time. It confirms what the page shows, and nothing that comes later. */
export function ConfirmForm({ screen }: { screen: ClockScreen }) {
  const [state, send, isSending] = useActionState(confirmClockAction, IDLE);
  return (
    <form action={send} className="apart">
      <HiddenFields of={{ commandId: screen.commandId, shop: screen.shop, shownAt: screen.shownAt }} />
      <FormAnswer state={state} />
      {state.status !== 'done' && (
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Noting…' : 'Yes, that is the time'}
        </button>
      )}
    </form>
  );
}
