import type { IncomingMessage, ServerResponse } from 'node:http';
import { clock } from '@/lib/clock';
import { exact } from '@/shared/quantity/exact';
import { wholeDown } from '@/shared/quantity/rounding';
import { countAnswer } from './request-counts';

/**
 * Count a request when it has been answered, and with LOG=json write one line about it: when, what kind of place, which
 * status, how long. No address, no name, no id, no query and no secret of a link is in it.
 */
export function watchAnswer(request: IncomingMessage, response: ServerResponse, requestId: string): void {
  const began = clock.steady();
  const [method, place] = [methodOf(request), placeOf(request.url ?? '/')];
  response.once('close', () => {
    const ms = clock.steady() - began;
    const status = response.statusCode;
    countAnswer({ place, method, status, ms });
    if (process.env.LOG !== 'json') return;
    const line = { at: new Date(clock.now()).toISOString(), what: 'answer', id: requestId, method, place, status };
    process.stdout.write(`${JSON.stringify({ ...line, ms: wholeDown(exact(ms)) })}\n`);
  });
}

const METHODS = ['GET', 'HEAD', 'POST', 'OPTIONS'];

/** What a stranger may call a method is not counted under a name of its own. */
const methodOf = ({ method = '' }: IncomingMessage): string => (METHODS.includes(method) ? method : 'other');

const PLACES = [
  ...[
    'today',
    'week',
    'mix',
    'shelf',
    'buy',
    'keep-out',
    'log',
    'setup',
    'board',
    'emergency',
    'search',
    'working',
    'sign-in',
  ],
  ...['_next'],
];

/** The place that a path belongs to: its first part, and of the API the part after `v1`. */
export function placeOf(path: string): string {
  const [first = '', second = '', third = ''] = (path.split('?')[0] ?? '').split('/').slice(1);
  if (first === 'api' && second === 'v1') return /^[a-z.-]{1,20}$/.test(third) ? `api/${third}` : 'api';
  if (first === '') return 'front';
  return PLACES.includes(first) ? first : 'other';
}
