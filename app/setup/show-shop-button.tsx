'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { showShopAction } from './actions';

/** Looks at another shop in this browser. Nothing in either shop changes. */
export function ShowShopButton({ shop }: { shop: { id: string; name: string } }) {
  const [state, send, isSending] = useActionState(showShopAction, IDLE);
  return (
    <form action={send}>
      <input type="hidden" name="shop" value={shop.id} />
      <button type="submit" disabled={isSending} aria-label={`Show ${shop.name}`}>
        Show this one
      </button>
      {state.status === 'refused' && <p role="alert">{state.message}</p>}
    </form>
  );
}
