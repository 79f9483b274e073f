import { expect, test } from '@playwright/test';
import { figure } from '../../promises/figure';
import {
  actionBody,
  builtActions,
  everyRow,
  FORM_TYPE,
  formBody,
  type Knock,
  knock,
  OWN_HOST,
  OWN_ORIGIN,
  rawKnock,
} from './knock';

const MB = 1024 * 1024;
const [action = ''] = builtActions();
const toForm = { Origin: OWN_ORIGIN, 'Content-Type': FORM_TYPE, 'Next-Action': action };
const toApi = { Origin: OWN_ORIGIN, 'Content-Type': 'application/json' };
const IMPORT = '/api/v1/shop/import';

const TURNED_AWAY: { what: string; status: number; sent: Knock }[] = [
  {
    what: 'a form of more than 1 MB',
    status: 413,
    sent: { headers: toForm, body: actionBody({ name: 'x'.repeat(1.3 * MB) }) },
  },
  {
    what: 'a form that does not say how long it is',
    status: 411,
    sent: { headers: { ...toForm, 'Transfer-Encoding': 'chunked' }, body: actionBody({}) },
  },
  {
    what: 'a form that is cut off',
    status: 400,
    sent: { headers: toForm, body: actionBody({ name: 'x' }).slice(0, 70) },
  },
  { what: 'a form that is garbage', status: 400, sent: { headers: toForm, body: 'garbage' } },
  {
    what: 'a form with dangling references',
    status: 400,
    sent: { headers: toForm, body: formBody([['0', '["$F1","$h2"]']]) },
  },
  {
    what: 'an action text that is not JSON',
    status: 400,
    sent: { headers: { ...toForm, 'Content-Type': 'text/plain' }, body: '{{{{' },
  },
  {
    what: 'an action text that is null',
    status: 400,
    sent: { headers: { ...toForm, 'Content-Type': 'text/plain' }, body: 'null' },
  },
  {
    what: 'an action nobody built',
    status: 409,
    sent: { headers: { ...toForm, 'Next-Action': '00'.repeat(21) }, body: actionBody({}) },
  },
  {
    what: 'an action id that is none',
    status: 400,
    sent: { headers: { ...toForm, 'Next-Action': '../x' }, body: actionBody({}) },
  },
  {
    what: 'a plain form without an action',
    status: 400,
    sent: { headers: { ...toForm, 'Next-Action': undefined }, body: formBody([['a', 'b']]) },
  },
  {
    what: 'a plain form whose action is mangled',
    status: 400,
    sent: {
      headers: { ...toForm, 'Next-Action': undefined },
      body: formBody([
        ['$ACTION_REF_1', ''],
        ['$ACTION_1:0', '{{{'],
      ]),
    },
  },
  { what: 'JSON to a page', status: 415, sent: { headers: toApi, body: '{}' } },
  {
    what: 'a router state that is none',
    status: 400,
    sent: { headers: { ...toForm, 'Next-Router-State-Tree': '%7B' }, body: actionBody({}) },
  },
  { what: 'JSON that is cut off', status: 400, sent: { path: IMPORT, headers: toApi, body: '{"into":"new","text":' } },
  {
    what: 'JSON nested five million deep',
    status: 400,
    sent: { path: IMPORT, headers: toApi, body: '['.repeat(5 * MB) },
  },
  {
    what: 'bytes that are no text',
    status: 400,
    sent: { path: IMPORT, headers: toApi, body: Buffer.from([0x7b, 0xff, 0xfe]) },
  },
  {
    what: 'JSON with an unknown field',
    status: 422,
    sent: { path: IMPORT, headers: toApi, body: '{"into":"new","txt":""}' },
  },
  { what: 'JSON that is a number', status: 422, sent: { path: IMPORT, headers: toApi, body: '7' } },
  {
    what: 'text to the API',
    status: 415,
    sent: { path: IMPORT, headers: { ...toApi, 'Content-Type': 'text/plain' }, body: '{}' },
  },
  {
    what: 'squeezed JSON',
    status: 415,
    sent: { path: IMPORT, headers: { ...toApi, 'Content-Encoding': 'gzip' }, body: '{}' },
  },
  {
    what: '30 MB to the API',
    status: 413,
    sent: { path: IMPORT, headers: toApi, body: `{"text":"${'x'.repeat(30 * MB)}"}` },
  },
  {
    what: '30 MB to the API without saying so',
    status: 413,
    sent: {
      path: IMPORT,
      headers: { ...toApi, 'Transfer-Encoding': 'chunked' },
      body: `{"text":"${'x'.repeat(30 * MB)}"}`,
    },
  },
  {
    what: 'a mix of 300 kB',
    status: 413,
    sent: { path: '/api/v1/mix/finish', headers: toApi, body: `{"notes":"${'x'.repeat(0.3 * MB)}"}` },
  },
  {
    what: 'a mix nested 33 deep',
    status: 400,
    sent: { path: '/api/v1/mix/finish', headers: toApi, body: `${'['.repeat(33)}${']'.repeat(33)}` },
  },
  {
    what: 'a form nested 33 deep',
    status: 400,
    sent: { headers: toForm, body: formBody([['0', `${'['.repeat(33)}${']'.repeat(33)}`]]) },
  },
  {
    what: 'a POST where there is only something to read',
    status: 405,
    sent: { path: '/api/v1/plan', headers: toApi, body: '{}' },
  },
];

for (const { what, status, sent } of TURNED_AWAY) {
  test(`${what} is turned away with ${status} and changes nothing`, async () => {
    const before = everyRow();
    const heard = await knock({ path: '/setup', ...sent });
    expect(heard.status).toBe(status);
    expect(heard.body).not.toMatch(/at .*\(.*:\d+:\d+\)|node_modules|Prisma|SQLITE/);
    expect(everyRow()).toBe(before);
    figure(30, `${what}: ${heard.status}`);
  });
}

test('a body shorter than its Content-Length is never half imported', async () => {
  const before = everyRow();
  const body = '{"commandId":"0123456789abcdef0","into":"new","text":"{}"}';
  const head = `POST ${IMPORT} HTTP/1.1\r\nHost: ${OWN_HOST}\r\nOrigin: ${OWN_ORIGIN}\r\nContent-Type: application/json\r\n`;
  expect(await rawKnock(`${head}Content-Length: ${body.length + 50}\r\n\r\n${body}`, 1_500)).toBe('');
  expect(everyRow()).toBe(before);
});

test('a Content-Length that is no number, or comes twice, is turned away', async () => {
  const head = `POST ${IMPORT} HTTP/1.1\r\nHost: ${OWN_HOST}\r\nOrigin: ${OWN_ORIGIN}\r\nContent-Type: application/json\r\n`;
  expect(await rawKnock(`${head}Content-Length: ten\r\n\r\n{}`)).toMatch(/ 400 /);
  expect(await rawKnock(`${head}Content-Length: 2\r\nContent-Length: 3\r\n\r\n{} `)).toMatch(/ 400 /);
  expect(await rawKnock(`${head}Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}`)).toMatch(/ 400 /);
});

test('24 MB arrive whole: the refusal names a fault at the very end of the file', async () => {
  const text = `{"a":"${'x'.repeat(18 * MB)}","zzz":}`;
  const heard = await knock({
    path: '/api/v1/shop/preview',
    headers: toApi,
    body: JSON.stringify({ into: 'new', text }),
  });
  expect(heard.status).toBe(422);
  expect(JSON.parse(heard.body).faults.length).toBeGreaterThan(0);
});
