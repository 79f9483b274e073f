'use client';

import { useActionState } from 'react';
import type { LinksScreen } from '@/lib/views/shared-links';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useCommandId } from '../../_parts/use-command-id';
import { makeLinkAction, revokeLinkAction } from './actions';

type MakeProps = Pick<LinksScreen, 'shop' | 'kind' | 'commandId'>;

/** Makes a link, each with a token of its own. */
export function MakeLink({ shop, kind, commandId: first }: MakeProps) {
  const [state, send, isSending] = useActionState(makeLinkAction, IDLE);
  const commandId = useCommandId(state.status === 'done' && state) || first;
  return (
    <form action={send} className="apart">
      <HiddenFields of={{ commandId, shop, kind }} />
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Making…' : 'Make a link'}
      </button>
    </form>
  );
}

type RevokeProps = { shop: string; link: LinksScreen['links'][number] };

/** Revokes a link. Whoever still has it sees nothing of the shop by it. */
export function RevokeLink({ shop, link: { id, commandId, madeAt } }: RevokeProps) {
  const [state, send, isSending] = useActionState(revokeLinkAction, IDLE);
  return (
    <form action={send}>
      <HiddenFields of={{ commandId, shop, link: id }} />
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending} aria-label={`Revoke the link of ${madeAt}`}>
        Revoke it
      </button>
    </form>
  );
}
