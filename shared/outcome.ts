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
  | { code: 'which-shop'; shops: { id: string; name: string }[] }
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
  | { code: 'cannot-be-read'; path: string; said: string }
  | { code: 'things-unread'; count: number; first: string }
  | { code: 'shop-changed-since-preview' }
  | { code: 'changed-meanwhile'; id: string }
  | { code: 'already-done'; on: string }
  | { code: 'in-use'; what: string; where: string[] }
  | { code: 'must-be-kept'; until: string; isPast: boolean }
  | { code: 'opens-earlier'; token: string; openings: string[] }
  | { code: 'many-bottles'; token: string; said: string[] }
  | { code: 'no-such-route' }
  | { code: 'clock-moved' }
  | { code: 'not-handed-over'; said: string }
  | { code: 'not-signed-in' }
  | { code: 'no-owner-yet' }
  | { code: 'not-allowed'; needs: readonly string[] }
  | { code: 'owner-there' }
  | { code: 'wrong-password' }
  | { code: 'too-many-tries'; seconds: number }
  | { code: 'disk-full'; said: string }
  | { code: 'not-writable'; said: string }
  | { code: 'too-much-work'; said: string }
  | { code: 'faults'; faults: Fault[] };

/** A decision: the value, or why not. Only expected refusals travel this way. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

export const accept = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const refuse = (refusal: Refusal): Outcome<never> => ({ ok: false, refusal });

/** One sentence per refusal. A new code without a sentence does not compile. */
export function explain(refusal: Refusal): string {
  // The list below has a sentence for every code, and each takes the facts of its own.
  const sentence = SENTENCES[refusal.code] as (facts: Refusal) => string;
  return sentence(refusal);
}

type Sentences = { [Code in Refusal['code']]: (facts: Extract<Refusal, { code: Code }>) => string };

const SENTENCES: Sentences = {
  'not-enough-stock': ({ left, unit, wanted }) =>
    `There is not enough left: ${wanted / 1000} ${unit} wanted, ${left / 1000} ${unit} there. Take less, or count the bottle.`,
  'not-found': ({ id, what }) => `There is no ${what} "${id}" in this shop.`,
  'which-shop': ({ shops }) =>
    `There are several shops here, and this device works in none of them yet. Name one with shop=ID: ${shopsInWords(shops)}.`,
  'already-there': ({ id, what }) => `There is already a ${what} "${id}" in this shop. Give the new one another id.`,
  'already-opened': ({ on }) => `This container was already opened, on ${on}.`,
  'nothing-left': () => 'There is nothing left in this bottle.',
  'not-opened': () => 'This bottle is not noted as opened.',
  'drawn-since-opened': () =>
    'Something was drawn from this bottle, so it was open. Take that back first if it was another bottle.',
  'ledger-moved': ({ left, unit }) =>
    `The ledger has moved since you looked: it now says ${left / 1000} ${unit}. Look at the bottle once more, and send again what you see now.`,
  'before-received': ({ receivedOn }) =>
    `That is before the container was received, on ${receivedOn}. Give that day or a later one.`,
  'more-than-it-holds': ({ most, unit }) =>
    `The container cannot hold that much: ${most / 1000} ${unit} at most. Check the figure and its unit.`,
  'already-reversed': () => 'This line was already taken back. Enter it anew if it was right after all.',
  'others-stand-on-it': () =>
    'This line cannot be taken back, because later ones used what it brought. Take those back first, or count the bottle.',
  'same-key-other-body': () =>
    'This form was already sent with other figures. Reload the page and enter the change again.',
  'cannot-be-read': ({ path, said }) =>
    `This was not kept, because it could not be read again afterwards: ${path ? `${path}: ` : ''}${said} Nothing was changed.`,
  'things-unread': ({ count, first }) =>
    `${count === 1 ? 'One thing of this shop' : `${count} things of this shop`} cannot be read (${first}) A file would lack ${count === 1 ? 'it' : 'them'}. Put this right on the Setup page first; a copy of the data folder holds everything as it stands.`,
  'shop-changed-since-preview': () =>
    'The shop has changed since this preview was made. Look at the changes once more, then confirm.',
  'changed-meanwhile': () =>
    'Somebody else changed this since you opened it. What you typed is still here: open it in another tab, look at what is there now, and enter your change again.',
  'already-done': ({ on }) =>
    `The spraying planned for ${on} is already on record, so nothing was drawn or written again. If it really was sprayed twice, mix it once more without the plan.`,
  'in-use': ({ what, where }) =>
    `This ${what} is in use and stays: ${where.join('; ')}. Put it away instead: it is then offered nowhere, and what it did stays.`,
  'must-be-kept': ({ until, isPast }) =>
    isPast
      ? `This record had to be kept until ${until}. It stays all the same: the chain that seals the later ones rests on it.`
      : `This record must be kept at least until ${until}. If it was entered in error, withdraw it: it then counts nowhere.`,
  'opens-earlier': ({ openings }) =>
    `This opens ${openings.length === 1 ? 'a bench' : `${openings.length} benches`} earlier, so nothing was changed yet. Make sure that nobody sprays there and the interval is over, write how you know, and send it again.`,
  'many-bottles': () =>
    'That is a great many bottles at once, so nothing was changed yet. Look at the count again; if it is right, say so and send it again.',
  'no-such-route': () => 'Nothing answers at this address. /api/v1/openapi.json lists what does.',
  'clock-moved': () =>
    'The clock has moved on since this page was made. Reload it, compare the time once more, and confirm that one.',
  'not-handed-over': ({ said }) => said,
  'not-signed-in': () =>
    'Nobody is signed in here, or the session is over. Sign in, then send it again. Nothing was changed.',
  'no-owner-yet': () => 'This shop has no owner yet. Open it in a browser and make the owner’s sign-in first.',
  'not-allowed': ({ needs }) =>
    `Your sign-in does not allow this here: it is for ${needs.map((role) => role.toLowerCase()).join(', ')}. Ask the owner. Nothing was changed.`,
  'owner-there': () => 'This shop has an owner already. Sign in, or ask the owner for an invitation.',
  'wrong-password': () => 'Name and password do not fit together. Look at both, then try again.',
  'too-many-tries': ({ seconds }) =>
    `That was tried too often. Wait ${seconds > 60 ? `${Math.ceil(seconds / 60)} minutes` : `${seconds} seconds`}, then try again.`,
  'disk-full': ({ said }) => said,
  'not-writable': ({ said }) => said,
  'too-much-work': ({ said }) => said,
  faults: ({ faults }) =>
    `${faults.length === 1 ? 'One thing' : `${faults.length} things`} must be put right first. Nothing was changed.`,
};

/** Every code that a refusal may have. */
export const REFUSAL_CODES = Object.keys(SENTENCES) as Refusal['code'][];

/** At most so many shops are named in a sentence. */
const SHOPS_NAMED = 5;

function shopsInWords(shops: { id: string; name: string }[]): string {
  const named = shops.slice(0, SHOPS_NAMED).map(({ id, name }) => `${id} (${name})`);
  return [...named, ...(shops.length > SHOPS_NAMED ? [`and ${shops.length - SHOPS_NAMED} more`] : [])].join(', ');
}
