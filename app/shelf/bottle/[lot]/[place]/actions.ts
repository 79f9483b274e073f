'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { correctLastDay } from '@/lib/commands/correct-last-day';
import { moveContainer } from '@/lib/commands/move-container';
import { openContainer } from '@/lib/commands/open-container';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { shutContainer } from '@/lib/commands/shut-container';
import { type Done, doorAction } from '@/lib/door/door-action';
import { lotToWrite } from '@/lib/views/bottle';
import { CorrectBottleDay, MoveBottle, OpenBottle, PayBottle, ShutBottle, TakeBackLine } from '@/shared/forms/bottle';
import type { FormState } from '@/shared/forms/form-state';
import { faultsBeside } from '@/shared/forms/supplier';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { showDay } from '@/shared/time/show-day';

const open = doorAction({ may: 'spray', form: OpenBottle }, async ({ shop, openedOn, ...about }, { actor }) => {
  const outcome = await openContainer({ ...about, shopId: shop, actor, openedOn }, clock);
  return told(outcome, `Noted as opened on ${showDay(openedOn)}.`);
});

/** Note that a bottle was opened. */
export async function openBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return open(state, form);
}

const shut = doorAction({ may: 'spray', form: ShutBottle }, async ({ shop, reason, ...about }, { actor }) => {
  const outcome = await shutContainer({ ...about, shopId: shop, actor, reason }, clock);
  return told(outcome, 'Noted as not opened after all.');
});

/** Note that a bottle was not opened after all. */
export async function shutBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return shut(state, form);
}

const move = doorAction({ may: 'spray', form: MoveBottle }, async ({ shop, keptIn, ...about }, { actor }) => {
  const outcome = await moveContainer({ ...about, shopId: shop, actor, keptIn: keptIn || null }, clock);
  if (outcome.ok && !outcome.value.moved) return accept({ message: 'It stood there already.' });
  return told(outcome, keptIn === '' ? 'Noted: nobody knows where it stands.' : `It stands in ${keptIn} now.`);
});

/** Note that a bottle stands somewhere else. */
export async function moveBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return move(state, form);
}

const correctDay = doorAction(
  { may: 'grow', form: CorrectBottleDay },
  async ({ shop, expiresOn, reason, ...about }, { actor }) => {
    const day = expiresOn === '' ? null : expiresOn;
    const outcome = await correctLastDay({ ...about, shopId: shop, actor, expiresOn: day, reason }, clock);
    if (outcome.ok && !outcome.value.corrected) return accept({ message: 'It said so already.' });
    return told(outcome, day === null ? 'No last day is printed on it.' : `Its printed last day is ${showDay(day)}.`);
  },
);

/** Correct the last day that is printed on a bottle. */
export async function correctBottleDayAction(state: FormState, form: FormData): Promise<FormState> {
  return correctDay(state, form);
}

const takeBack = doorAction(
  { may: 'spray', form: TakeBackLine },
  async ({ shop, commandId, movement, reason }, { actor }) => {
    const outcome = await reverseMovement({ commandId, shopId: shop, actor, movement, reason }, clock);
    return told(outcome, 'Taken back. Both lines stay in the ledger.');
  },
);

/** Take a line of a bottle's ledger back. */
export async function takeBackAction(state: FormState, form: FormData): Promise<FormState> {
  return takeBack(state, form);
}

const pay = doorAction(
  { may: 'grow', form: PayBottle },
  async ({ commandId, shop: shopId, lotId, place, paid }, { actor }) => {
    const lot = await lotToWrite(clock, shopId, { lotId, place });
    if (!lot) return refuse({ code: 'not-found', what: 'lot', id: lotId });
    const part = { lots: [{ ...lot, paid }] };
    const outcome = await changeShop({ commandId, shopId, actor, part }, clock);
    if (!outcome.ok && outcome.refusal.code === 'faults') {
      return refuse({ ...outcome.refusal, faults: faultsBeside(outcome.refusal.faults, 'lots[0]') });
    }
    return told(outcome, `Noted: ${paid} for the whole lot.`);
  },
);

/** Note what was paid for the lot of a bottle, where nobody entered it. */
export async function payBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return pay(state, form);
}

/** What to say once it happened; every page that shows the bottle is made anew. */
function told(outcome: Outcome<unknown>, message: string): Outcome<Done> {
  // Also after a refusal, because what stood in the way may not be on the page yet.
  revalidatePath('/', 'layout');
  return outcome.ok ? accept({ message }) : outcome;
}
