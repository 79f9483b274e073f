import type { Stock } from './quantity/amounts';

/** What was typed, read; or one sentence that says what is wrong and what to write instead. */
export type Reading<T> = { ok: true; value: T } | { ok: false; message: string };

export const read = <T>(value: T): Reading<T> => ({ ok: true, value });
export const unreadable = (message: string): Reading<never> => ({ ok: false, message });

/** One thing wrong in a shop file or a form: where, and what to write instead. */
export type Fault = { path: string; message: string };

/** Everything the shop may refuse, with the facts needed to explain it. */
export type Refusal =
  | { code: 'not-enough-stock'; wanted: Stock; left: Stock; unit: 'mL' | 'g' }
  | { code: 'not-found'; what: string; id: string }
  | { code: 'already-there'; what: string; id: string }
  | { code: 'already-opened'; on: string }
  | { code: 'nothing-left' }
  | { code: 'not-opened' }
  | { code: 'drawn-since-opened' }
  | { code: 'ledger-moved'; left: Stock; unit: 'mL' | 'g' }
  | { code: 'before-received'; receivedOn: string }
  | { code: 'more-than-it-holds'; most: Stock; unit: 'mL' | 'g' }
  | { code: 'already-reversed'; movement: string }
  | { code: 'others-stand-on-it'; movement: string }
  | { code: 'same-key-other-body' }
  | { code: 'shop-changed-since-preview' }
  | { code: 'changed-meanwhile'; id: string }
  | { code: 'already-done'; on: string }
  | { code: 'in-use'; what: string; where: string[] }
  | { code: 'no-such-route' }
  | { code: 'faults'; faults: Fault[] };

/** A decision: the value, or why not. Only expected refusals travel this way. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

export const accept = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const refuse = (refusal: Refusal): Outcome<never> => ({ ok: false, refusal });

/** One sentence per refusal. A new code without a sentence does not compile. */
export function explain(refusal: Refusal): string {
  switch (refusal.code) {
    case 'not-enough-stock':
      return `There is not enough left: ${refusal.wanted / 1000} ${refusal.unit} wanted, ${refusal.left / 1000} ${refusal.unit} there. Take less, or count the bottle.`;
    case 'not-found':
      return `There is no ${refusal.what} "${refusal.id}" in this shop.`;
    case 'already-there':
      return `There is already a ${refusal.what} "${refusal.id}" in this shop. Give the new one another id.`;
    case 'already-opened':
      return `This container was already opened, on ${refusal.on}.`;
    case 'nothing-left':
      return 'There is nothing left in this bottle.';
    case 'not-opened':
      return 'This bottle is not noted as opened.';
    case 'drawn-since-opened':
      return 'Something was drawn from this bottle, so it was open. Take that back first if it was another bottle.';
    case 'ledger-moved':
      return `The ledger has moved since you looked: it now says ${refusal.left / 1000} ${refusal.unit}. Look at the bottle once more, and send again what you see now.`;
    case 'before-received':
      return `That is before the container was received, on ${refusal.receivedOn}. Give that day or a later one.`;
    case 'more-than-it-holds':
      return `The container cannot hold that much: ${refusal.most / 1000} ${refusal.unit} at most. Check the figure and its unit.`;
    case 'already-reversed':
      return 'This line was already taken back. Enter it anew if it was right after all.';
    case 'others-stand-on-it':
      return 'This line cannot be taken back, because later ones used what it brought. Take those back first, or count the bottle.';
    case 'same-key-other-body':
      return 'This form was already sent with other figures. Reload the page and enter the change again.';
    case 'shop-changed-since-preview':
      return 'The shop has changed since this preview was made. Look at the changes once more, then confirm.';
    case 'changed-meanwhile':
      return 'Somebody else changed this since you opened it. What you typed is still here: open it in another tab, look at what is there now, and enter your change again.';
    case 'already-done':
      return `The spraying planned for ${refusal.on} is already on record, so nothing was drawn or written again. If it really was sprayed twice, mix it once more without the plan.`;
    case 'in-use':
      return `This ${refusal.what} is in use and stays: ${refusal.where.join('; ')}. Put it away instead: it is then offered nowhere, and what it did stays.`;
    case 'no-such-route':
      return 'Nothing answers at this address. /api/v1/openapi.json lists what does.';
    case 'faults':
      return `${refusal.faults.length === 1 ? 'One thing' : `${refusal.faults.length} things`} in this file must be put right first. Nothing was changed.`;
  }
}
