'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { type Done, doorAction } from '@/lib/door/door-action';
import { bottleToWrite } from '@/lib/views/bottle';
import { CountBottle, DiscardFromBottle, DrawFromBottle, reasonIn } from '@/shared/forms/bottle';
import type { FormState } from '@/shared/forms/form-state';
import { readLevel, readStock } from '@/shared/measure/read-stock';
import { showStock } from '@/shared/measure/show';
import { accept, type Outcome, type Reading, refuse } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { readLocalTime } from '@/shared/time/local-time';
import type { Zone } from '@/shared/time/zone';

const count = doorAction(
  { may: 'spray', form: CountBottle },
  async ({ shop, found: typed, why, words, ...about }, { actor }) => {
    const bottle = await bottleToWrite(shop, about);
    if (!bottle) return noBottle(about);
    const found = readLevel(typed, bottle.size, bottle.kept);
    if (!found.ok) return wrong('found', found.message);
    const reason = reasonIn(why, words);
    const counted = { ...about, shopId: shop, actor, found: found.value, countedAt: null, reason };
    const outcome = await countContainer(counted, clock);
    const shown = showStock(found.value, bottle.kept.form, bottle.units);
    const same = outcome.ok && outcome.value.movement === null;
    return told(
      atField(outcome, 'reason', 'why'),
      same ? `Counted ${shown}, as the ledger says.` : `Counted ${shown}. The ledger says so now.`,
    );
  },
);

/** Set a bottle to what a person sees in it. */
export async function countBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return count(state, form);
}

const discard = doorAction({ may: 'spray', form: DiscardFromBottle }, async (sent, { actor }) => {
  const { shop, much, amount: typed, why, words, when, ...about } = sent;
  const bottle = await bottleToWrite(shop, about);
  if (!bottle) return noBottle(about);
  const amount: Reading<Stock | null> = much === 'all' ? { ok: true, value: null } : readStock(typed, bottle.kept);
  if (!amount.ok) return wrong('amount', amount.message);
  const discardedAt = pastTime(when, bottle.zone);
  if (!discardedAt.ok) return wrong('when', discardedAt.message);
  const reason = reasonIn(why, words) ?? why;
  const taken = { amount: amount.value, discardedAt: discardedAt.value, reason, returned: why === 'returned' };
  const outcome = await discardStock({ ...about, shopId: shop, actor, ...taken }, clock);
  const shown = amount.value === null ? 'All of it' : showStock(amount.value, bottle.kept.form, bottle.units);
  return told(outcome, `${shown} ${why === 'returned' ? 'went back' : 'was thrown away'}.`);
});

/** Take stock away that will not be used. */
export async function discardFromBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return discard(state, form);
}

const draw = doorAction(
  { may: 'spray', form: DrawFromBottle },
  async ({ shop, amount: typed, reason, when, ...about }, { actor }) => {
    const bottle = await bottleToWrite(shop, about);
    if (!bottle) return noBottle(about);
    const amount = readStock(typed, bottle.kept);
    if (!amount.ok) return wrong('amount', amount.message);
    const drawnAt = pastTime(when, bottle.zone);
    if (!drawnAt.ok) return wrong('when', drawnAt.message);
    const drawn = { amount: amount.value, drawnAt: drawnAt.value, reason };
    const outcome = await drawStock({ ...about, shopId: shop, actor, ...drawn }, clock);
    return told(outcome, `${showStock(amount.value, bottle.kept.form, bottle.units)} was drawn.`);
  },
);

/** Draw from a bottle for something that no spraying says. */
export async function drawFromBottleAction(state: FormState, form: FormData): Promise<FormState> {
  return draw(state, form);
}

/** When it happened; null for now, so that a form that is sent twice says the same twice. */
function pastTime(text: string, zone: Zone): Reading<Instant | null> {
  if (text === '') return { ok: true, value: null };
  const time = readLocalTime(text, zone);
  if (!time.ok || time.value <= clock.now()) return time;
  return { ok: false, message: 'This time is yet to come. Give an earlier one, or leave it empty for now.' };
}

function noBottle({ lotId, place }: { lotId: string; place: number }): Outcome<never> {
  return refuse({ code: 'not-found', what: 'bottle', id: `${lotId}, number ${place + 1}` });
}

function wrong(path: string, message: string): Outcome<never> {
  return refuse({ code: 'faults', faults: [{ path, message }] });
}

/** A fault of the command beside the field of the form that has another name. */
function atField<T>(outcome: Outcome<T>, path: string, field: string): Outcome<T> {
  if (outcome.ok || outcome.refusal.code !== 'faults') return outcome;
  const { faults } = outcome.refusal;
  return refuse({ code: 'faults', faults: faults.map((one) => (one.path === path ? { ...one, path: field } : one)) });
}

/** What to say once it happened; every page that shows the bottle is made anew. */
function told(outcome: Outcome<unknown>, message: string): Outcome<Done> {
  // Also after a refusal: a count that is asked for again needs the ledger as it stands now.
  revalidatePath('/', 'layout');
  return outcome.ok ? accept({ message }) : outcome;
}
