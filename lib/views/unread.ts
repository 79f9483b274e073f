import 'server-only';
import { parentOf } from '@/lib/engine/exchange/split-lots';
import type { ShopFile } from '@/shared/shop-file/contract';
import { shown } from '@/shared/shop-file/path';
import { type OddValue, SINGULAR, type UnreadThing, unreadIn } from '@/shared/shop-file/unread';
import { tidyText } from '@/shared/text/text-fault';
import { newCommandId } from '../data/new-id';
import { NEITHER, UNREADABLE, WRONG_NUMBERS } from '../data/readable-cells';

/** One value that cannot be read, as its form shows it. */
export type OddShown = {
  path: string;
  /** What stands there; null where it is of a kind that cannot be shown. */
  says: string | null;
  message: string;
  proposed: string;
  /** Whether it is a yes or no, which is asked anew. */
  isYesNo: boolean;
};

/** One thing that cannot be read: what it is, which benches are kept out of for it, and what is wrong in it. */
export type UnreadShown = {
  key: string;
  list: UnreadThing['list'];
  id: string;
  what: string;
  benches: string | null;
  isLeftOut: boolean;
  odd: OddShown[];
  commandId: string;
};

/** Everything of a shop that cannot be read, for Setup, and what is missing only because of it. */
export function unreadScreen(file: ShopFile): { things: UnreadShown[]; caused: string[] } {
  const unread = unreadIn(file);
  return {
    things: unread.filter(({ isCaused }) => !isCaused).map((thing, number) => shownOf(thing, file, number)),
    caused: unread.filter(({ isCaused }) => isCaused).map(nameOf),
  };
}

/** How many things of a shop cannot be read, in one sentence for its pages; null when all can. */
export function unreadSentence(file: ShopFile): string | null {
  const things = unreadIn(file).filter(({ isCaused }) => !isCaused);
  const [first, ...more] = things;
  if (!first) return null;
  const closed = things.some(({ benches }) => benches === 'all' || benches.length > 0);
  const rest = more.length === 0 ? '' : ` and ${more.length} more`;
  return `${things.length === 1 ? '1 thing' : `${things.length} things`} of this shop cannot be read: ${nameOf(first)}${rest}.${closed ? ' Benches that it may have closed are kept out of.' : ''}`;
}

type Of = { list: UnreadThing['list']; id?: string };

/** What of one thing or one list cannot be read, and what follows, in one sentence; null when all of it can. */
export function unreadOfSentence(file: ShopFile, { list, id }: Of): string | null {
  // A lot that was parted stands under the id it came in with.
  const isIt = (one: string) => id === undefined || one === id || parentOf(one) === id;
  const things = unreadIn(file).filter((one) => one.list === list && isIt(one.id));
  if (things.length === 0) return null;
  const said = things.flatMap((thing) => {
    const [first] = thing.odd;
    const what = id === undefined ? [`${nameOf(thing)}${thing.isLeftOut ? ' is left out' : ''}: `] : [];
    return first ? [`${what}${first.path}: ${messageOf(first)}`] : what;
  });
  const benches = things.flatMap((thing) => benchWords(thing.benches, file) ?? []);
  return [...new Set([...said, ...benches])].join(' ');
}

const nameOf = ({ list, id }: UnreadThing): string =>
  list === 'shop' ? 'the shop itself' : `${SINGULAR[list]} ${shown(id)}`;

function shownOf(thing: UnreadThing, file: ShopFile, number: number): UnreadShown {
  const { list, id, isLeftOut, odd, benches } = thing;
  return {
    ...{ key: `unread-${number}`, list, id, what: nameOf(thing), isLeftOut, commandId: newCommandId() },
    benches: benchWords(benches, file),
    odd: odd.map(({ path, message, is }) => {
      const proposed = typeof is === 'string' ? tidyText(is) : '';
      return {
        path,
        // In a form nothing is written where a file has null.
        message: messageOf({ is, message }).replace('null when', 'nothing when'),
        says: saysOf(is),
        proposed: proposed === is || is === NEITHER ? '' : proposed.slice(0, 200),
        isYesNo: is === NEITHER,
      };
    }),
  };
}

/** What stands there, as far as it can be told: a value of the wrong kind was put in a form that no file may hold. */
function saysOf(is: unknown): string | null {
  if (typeof is === 'number' && WRONG_NUMBERS.includes(is)) return null;
  if (typeof is !== 'string' || !is.startsWith(UNREADABLE)) return shown(is);
  return is === UNREADABLE ? 'nothing' : shown(is.slice(UNREADABLE.length));
}

/** What is wrong with it. Of a value of the wrong kind the contract knows only what was put in its place. */
function messageOf({ is, message }: Pick<OddValue, 'is' | 'message'>): string {
  if (is === NEITHER) return 'Whether it is yes or no cannot be read. Say which.';
  return isWrongKind(is) ? `A value of the wrong kind stands here.${message.replace(/^.*?\.(?= |$)/, '')}` : message;
}

const isWrongKind = (is: unknown): boolean =>
  (typeof is === 'number' && WRONG_NUMBERS.includes(is)) || (typeof is === 'string' && is.startsWith(UNREADABLE));

function benchWords(benches: UnreadThing['benches'], file: ShopFile): string | null {
  if (benches === 'all') return 'Every bench is kept out of until it can be read.';
  const names = benches.map((id) => file.benches.find((bench) => bench.id === id)?.name ?? id);
  return names.length === 0 ? null : `Kept out of until it can be read: ${names.join(', ')}.`;
}
