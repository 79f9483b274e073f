import { expect, test } from '@playwright/test';
import fc from 'fast-check';
import { actionBody, builtActions, everyRow, FORM_TYPE, type Knock, knock, OWN_ORIGIN, serverMegabytes } from './knock';

const COUNT = Number(process.env.E2E_FUZZ ?? 1_500);
const AT_ONCE = 6;

const [action = ''] = builtActions();
const PATHS = ['/', '/today', '/week', '/shelf', '/setup', '/nope', '/working', '/shelf/%00', '/shelf/%E0%A4%A'];
const API = [
  '/api/v1/plan',
  '/api/v1/keepout',
  '/api/v1/shop',
  '/api/v1/working',
  '/api/v1/shop/preview',
  '/api/v1/nope',
];

const text = fc.oneof(fc.string({ maxLength: 60 }), fc.string({ unit: 'binary', maxLength: 60 }));
const visible = text.map((value) => value.replace(/[^\x20-\x7e]/g, ''));
const junk = fc.oneof(
  text,
  fc.json(),
  fc.constant(''),
  fc.constant('null'),
  fc.constant('["$K1"]'),
  fc.constant('"$Q1"'),
);
const query = fc.dictionary(fc.constantFrom('today', 'weeks', 'now', 'shop', 'figure', 'x', '_rsc'), text, {
  maxKeys: 3,
});
const withQuery = fc
  .tuple(fc.constantFrom(...PATHS, ...API), query)
  .map(([path, asked]) => `${path}?${new URLSearchParams(asked)}`);

/** Nothing here can be a form or a file that means something, so none of it may change anything. */
const knocks: fc.Arbitrary<Knock> = fc.oneof(
  fc.record({ method: fc.constant('GET'), path: withQuery }),
  fc.record({
    method: fc.constant('GET'),
    path: fc.constantFrom(...PATHS),
    headers: fc.record({
      RSC: fc.constantFrom('1', undefined),
      'Next-Router-State-Tree': fc.oneof(visible, fc.json().map(encodeURIComponent)),
      'Next-Url': visible,
      'Next-Router-Prefetch': fc.constantFrom('1', '2', undefined),
      Cookie: visible,
    }),
  }),
  fc.record({
    path: fc.constantFrom(...PATHS),
    headers: fc.record({
      Origin: fc.constant(OWN_ORIGIN),
      'Content-Type': fc.constantFrom(
        FORM_TYPE,
        'text/plain;charset=UTF-8',
        'application/json',
        'multipart/form-data',
        'x',
      ),
      'Next-Action': fc.constantFrom(action, '00'.repeat(21), 'x', undefined),
    }),
    body: fc.oneof(junk, fc.dictionary(visible, visible, { maxKeys: 3 }).map(actionBody)),
  }),
  fc.record({
    path: fc.constantFrom('/api/v1/shop/preview', '/api/v1/shop/import'),
    headers: fc.constant({ Origin: OWN_ORIGIN, 'Content-Type': 'application/json' }),
    body: fc.oneof(
      junk,
      fc.record({ into: text, text: junk }).map((body) => JSON.stringify(body)),
    ),
  }),
);

test(`${COUNT} malformed requests are no fault of ours, change nothing and leave no memory behind`, async () => {
  test.setTimeout(600_000);
  const seed = Number(process.env.E2E_SEED ?? process.hrtime.bigint() % 2_147_483_647n);
  const all = fc.sample(knocks, { numRuns: COUNT, seed });
  const before = everyRow();
  // What the first requests make the heap grow by is room that it keeps, not memory that is lost: a leak goes on.
  const faults = await hear(all.slice(0, COUNT / 2));
  const memory = serverMegabytes();
  faults.push(...(await hear(all.slice(COUNT / 2))));
  expect({ seed, faults: faults.slice(0, 5) }).toEqual({ seed, faults: [] });
  expect(everyRow()).toBe(before);
  if (memory !== null) expect((serverMegabytes() ?? 0) - memory).toBeLessThan(200);
});

/** Send them a few at a time, and give those that came out as a fault of ours. */
async function hear(all: Knock[]): Promise<{ sent: Knock; status: number; body: string }[]> {
  const faults: { sent: Knock; status: number; body: string }[] = [];
  const waiting = [...all];
  const one = async () => {
    for (let sent = waiting.pop(); sent; sent = waiting.pop()) {
      const heard = await knock(sent);
      if (heard.status >= 500) faults.push({ sent, status: heard.status, body: heard.body.slice(0, 200) });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  return faults;
}
