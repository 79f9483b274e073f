'use client';

import { useActionState } from 'react';
import type { JustMoved, MoveTo, SprayingMove } from '@/lib/views/spraying-move';
import { IDLE } from '@/shared/forms/form-state';
import type { Day } from '@/shared/time/day';
import { FormAnswer } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { moveSprayingAction } from './actions';
import { MoveAnywhere } from './move-anywhere';
import { MoveFields } from './move-fields';
import styles from './move-forms.module.css';

type MoveFormsProps = { move: SprayingMove; from: Day; today: Day };

/** Where a spraying could go: in one step to a start that is clear of opening hours, back, or anywhere. */
export function MoveForms({ move, from, today }: MoveFormsProps) {
  return (
    <div className={styles.moves}>
      {move.clear.length > 0 && <p className="small">Move it clear of opening hours:</p>}
      {move.clear.map((to) => (
        <MoveThere key={`${to.day} ${to.at}`} move={move} to={to} from={from} say={to.words} />
      ))}
      {move.back && <MoveThere move={move} to={move.back} from={from} say={`Back to ${move.back.words}`} />}
      <MoveAnywhere move={move} from={from} today={today} />
    </div>
  );
}

type MoveThereProps = { move: JustMoved['move']; to: MoveTo; from: Day; say: string };

/** One button that moves a spraying to one place. */
function MoveThere({ move, to, from, say }: MoveThereProps) {
  const [state, send, isSending] = useActionState(moveSprayingAction, IDLE);
  return (
    <form action={send}>
      <MoveFields move={move} commandId={to.commandId} from={from} />
      <HiddenFields of={{ to: to.day, at: to.at }} />
      <button type="submit" disabled={isSending}>
        {say}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}

/** Says what was just moved, and takes it back. */
export function MovedNotice({ moved: { recipe, to, was, move }, from }: { moved: JustMoved; from: Day }) {
  return (
    <div className={styles.moved} role="status">
      <p>
        <b>{recipe}</b> is now on {to}. It was on {was.words}.
      </p>
      <MoveThere move={move} to={was} from={from} say="Undo it" />
    </div>
  );
}
