'use client';

import { useActionState } from 'react';
import type { ClockScreen } from '@/lib/views/clock-screen';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { confirmClockAction } from './actions';

/** The time that the page shows is right. It confirms what the page shows, and nothing that comes later. */
export function ConfirmForm({ screen }: { screen: ClockScreen }) {
  const [state, send, isSending] = useActionState(confirmClockAction, IDLE);
  return (
    <form action={send} className="apart">
      <HiddenFields of={{ commandId: screen.commandId, shop: screen.shop, shownAt: screen.shownAt }} />
      <FormAnswer state={state} />
      {state.status !== 'done' &&
        (screen.wentAhead === null ? <Yes {...{ screen, isSending }} /> : <WhyAhead {...{ screen, isSending }} />)}
    </form>
  );
}

function Yes({ screen, isSending }: { screen: ClockScreen; isSending: boolean }) {
  const yes =
    screen.doubt === 'restored'
      ? 'Every spraying since the backup is entered, and that is the time'
      : 'Yes, that is the time';
  return (
    <button type="submit" data-main="" disabled={isSending}>
      {isSending ? 'Noting…' : yes}
    </button>
  );
}

/** A clock goes ahead for two reasons, and only one of them changes what was recorded before. */
function WhyAhead({ screen, isSending }: { screen: ClockScreen; isSending: boolean }) {
  return (
    <>
      <p>It is {screen.wentAhead} further than the time that the shop saw pass. Why?</p>
      <p className="apart">
        <button type="submit" name="wasRight" value="yes" data-main="" disabled={isSending}>
          {isSending ? 'Noting…' : 'The computer was off or asleep: that is the time'}
        </button>
      </p>
      <p className="apart">
        <button type="submit" name="wasRight" value="no" disabled={isSending}>
          It was wrong and has been set: that is the time now
        </button>
      </p>
      <p className="soft apart">
        If it was wrong, benches that were sprayed before stay closed {screen.wentAhead} longer than their records say.
      </p>
    </>
  );
}
