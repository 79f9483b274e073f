'use client';

import { type ReactNode, useActionState } from 'react';
import type { EquivalentsScreen } from '@/lib/views/equivalents';
import type { LineTo } from '@/lib/views/switch-ahead';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { switchProductAction } from './actions';

type SwitchProps = {
  of: Pick<EquivalentsScreen, 'shopId' | 'recipe' | 'standing' | 'line'>;
  to: LineTo;
  /** Sent twice, it is one command. */
  commandId: string;
  isBack?: boolean;
  children: ReactNode;
};

/** One button that puts a product at its dose into the recipe. */
export function SwitchForm({ of, to, commandId, isBack = false, children }: SwitchProps) {
  const [state, send, isSending] = useActionState(switchProductAction, IDLE);
  const fields = {
    ...{ commandId, shop: of.shopId, recipe: of.recipe.id, standing: of.standing, line: String(of.line) },
    ...{ ...to, back: isBack ? 'yes' : '' },
  };
  return (
    <form action={send}>
      <HiddenFields of={fields} />
      <button type="submit" data-main={isBack ? undefined : ''} disabled={isSending}>
        {isSending ? 'Saving a new version…' : children}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
