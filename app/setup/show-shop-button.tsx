'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { showShopAction } from './actions';

/** Lets this device work in another shop. Nothing in either shop changes. */
export function ShowShopButton({ shop }: { shop: { id: string; name: string } }) {
  const [state, send, isSending] = useActionState(showShopAction, IDLE);
  return (
    <form action={send}>
      <input type="hidden" name="shop" value={shop.id} />
      <button type="submit" disabled={isSending} aria-label={`Work in ${shop.name} on this device`}>
        Work in this one here
      </button>
      {state.status === 'refused' && <p role="alert">{state.message}</p>}
    </form>
  );
}
