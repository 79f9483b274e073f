'use client';

import { useActionState } from 'react';
import type { BoardLinksScreen } from '@/lib/views/board-links';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { useCommandId } from '../../_parts/use-command-id';
import { makeBoardLinkAction, revokeBoardLinkAction } from './actions';

type MakeProps = Pick<BoardLinksScreen, 'shop' | 'commandId'>;

/** Makes a link, each with a token of its own. */
export function MakeLink({ shop, commandId: first }: MakeProps) {
  const [state, send, isSending] = useActionState(makeBoardLinkAction, IDLE);
  const commandId = useCommandId(state.status === 'done' && state) || first;
  return (
    <form action={send} className="apart">
      <input type="hidden" name="commandId" value={commandId} />
      <input type="hidden" name="shop" value={shop} />
      <input type="hidden" name="kind" value="board" />
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Making…' : 'Make a link'}
      </button>
    </form>
  );
}

type RevokeProps = { shop: string; link: BoardLinksScreen['links'][number] };

/** Revokes a link. Whoever still has it reads keep out, and to ask the shop. */
export function RevokeLink({ shop, link: { id, commandId, madeAt } }: RevokeProps) {
  const [state, send, isSending] = useActionState(revokeBoardLinkAction, IDLE);
  return (
    <form action={send}>
      <input type="hidden" name="commandId" value={commandId} />
      <input type="hidden" name="shop" value={shop} />
      <input type="hidden" name="link" value={id} />
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending} aria-label={`Revoke the link of ${madeAt}`}>
        Revoke it
      </button>
    </form>
  );
}
