import { expect, test } from 'vitest';
import { allowedHosts } from '@/lib/door/allowed-hosts';
import { judgeKnock } from '@/lib/door/judge-knock';

const HOSTS = allowedHosts({ PORT: '3000', HOST: '127.0.0.1' });

const judged = (method: string, path: string, headers: Record<string, string>) => {
  const all: Record<string, string> = { host: '127.0.0.1:3000', ...headers };
  return judgeKnock({ method, path, header: (name) => all[name] ?? null }, HOSTS)?.status ?? 'in';
};

const own = { origin: 'http://127.0.0.1:3000' };
const form = { ...own, 'content-length': '10', 'content-type': 'multipart/form-data; boundary=x' };

test.each([
  ['looking at a page', 'in', 'GET', '/today', {}],
  ['looking from elsewhere is not a change', 'in', 'GET', '/today', { origin: 'http://shop.example' }],
  ['a form of our own page', 'in', 'POST', '/setup', form],
  [
    'a form by another name of this machine',
    'in',
    'POST',
    '/setup',
    { ...form, host: 'localhost:3000', origin: 'http://localhost:3000' },
  ],
  ['a form as long as may be', 'in', 'POST', '/setup', { ...form, 'content-length': '1048576' }],
  ['a form one byte longer', 413, 'POST', '/setup', { ...form, 'content-length': '1048577' }],
  ['a mix as long as may be', 'in', 'POST', '/api/v1/mix/finish', { ...own, 'content-length': '262144' }],
  ['a mix one byte longer', 413, 'POST', '/api/v1/mix/finish', { ...own, 'content-length': '262145' }],
  ['a list one byte longer', 413, 'POST', '/api/v1/csv/import', { ...own, 'content-length': '10485761' }],
  ['a page that another site asks for', 403, 'GET', '/today', { 'sec-fetch-site': 'cross-site' }],
  ['a page that another port asks for', 403, 'GET', '/today', { 'sec-fetch-site': 'same-site' }],
  ['a page that a person asks for', 'in', 'GET', '/today', { 'sec-fetch-site': 'none' }],
  ['a form that another site sends', 403, 'POST', '/setup', { ...form, 'sec-fetch-site': 'cross-site' }],
  ['a file as long as may be', 'in', 'POST', '/api/v1/shop/import', { ...own, 'content-length': '26214400' }],
  ['a file one byte longer', 413, 'POST', '/api/v1/shop/import', { ...own, 'content-length': '26214401' }],
  ['a form without a length', 411, 'POST', '/setup', { ...own, 'content-type': 'multipart/form-data; boundary=x' }],
  ['a form without an Origin', 403, 'POST', '/setup', { ...form, origin: '' }],
  ['a form from elsewhere', 403, 'POST', '/setup', { ...form, origin: 'http://shop.example' }],
  ['a form from a sealed frame', 403, 'POST', '/setup', { ...form, origin: 'null' }],
  ['a question before a change, from elsewhere', 403, 'OPTIONS', '/api/v1/plan', { origin: 'http://shop.example' }],
  ['another Host', 403, 'GET', '/today', { host: 'shop.example:3000' }],
  ['our Host on another port', 403, 'GET', '/today', { host: '127.0.0.1:3001' }],
  ['no Host', 403, 'GET', '/today', { host: '' }],
  ['a method without a use', 405, 'TRACE', '/today', {}],
  ['a whole address', 400, 'GET', 'http://shop.example/today', {}],
  ['a path that begins like an address', 400, 'GET', '//shop.example', {}],
  ['percent signs that mean nothing', 400, 'GET', '/shelf/%E0%A4%A', {}],
  ['percent signs in what is asked', 'in', 'GET', '/shelf?q=%E0%A4%A', {}],
  ['a backslash', 400, 'GET', '/\\shop.example', {}],
  ['JSON to a page', 415, 'POST', '/setup', { ...form, 'content-type': 'application/json' }],
  ['an action id that is none', 400, 'POST', '/setup', { ...form, 'next-action': 'x' }],
  ['a router state that is none', 400, 'GET', '/today', { 'next-router-state-tree': '%7B%7D' }],
  ['a router state of ours', 'in', 'GET', '/today', { 'next-router-state-tree': '%5B%22%22%2C%7B%7D%5D' }],
])('%s: %s', (_, verdict, method, path, headers) => {
  expect(judged(method, path, headers)).toBe(verdict);
});

test('port 80 is left out by browsers, and another loopback address is answered when it is the one served', () => {
  expect(allowedHosts({ PORT: '80' }).get('localhost')).toBe('http');
  expect(allowedHosts({ PORT: '3000', HOST: '127.0.0.7' }).get('127.0.0.7:3000')).toBe('http');
  expect(allowedHosts({ HOST: '::1' }).get('[::1]:3000')).toBe('http');
  expect(allowedHosts({ PORT: '3000', HOST: 'shop.example' }).has('shop.example:3000')).toBe(false);
});
