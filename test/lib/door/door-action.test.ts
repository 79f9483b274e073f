import { beforeEach, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { doorAction } from '@/lib/door/door-action';
import { IDLE } from '@/shared/forms/form-state';
import { accept, refuse } from '@/shared/outcome';
import { oneLine, typedLine } from '@/shared/text/one-line';

const request = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/headers', () => ({ headers: async () => request.headers }));
vi.mock('@/lib/access/who-asks', () => ({ whoAsks: async () => ({ kind: 'unowned' }) }));

const Draw = z.strictObject({ lot: z.string().min(1, { error: 'Choose a bottle.' }), ml: z.coerce.number() });
const ran = vi.fn(async ({ ml }: z.output<typeof Draw>) =>
  ml > 100 ? refuse({ code: 'not-found', what: 'lot', id: 'l1' }) : accept({ message: `took ${ml}` }),
);
const drawAction = doorAction({ may: 'spray', form: Draw }, ran);

function filled(fields: Record<string, string>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}

const FORM = { lot: 'l1', ml: '5', $ACTION_KEY: 'k1' };

beforeEach(() => {
  ran.mockClear();
  const ours = { host: '127.0.0.1:3000', origin: 'http://127.0.0.1:3000' };
  request.headers = new Headers({ ...ours, 'content-length': '9', 'content-type': 'multipart/form-data; boundary=x' });
});

test('a form from our own page is read and done', async () => {
  expect(await drawAction(IDLE, filled(FORM))).toEqual({ status: 'done', message: 'took 5', link: null });
  expect(ran).toHaveBeenCalledWith({ lot: 'l1', ml: 5 }, { actor: 'owner', personId: null });
});

test('the sixty-first change in a minute is not made, and says how long to wait; another visitor is not held up', async () => {
  request.headers.set('x-bench-address', '10.0.0.1');
  for (let change = 1; change <= 60; change += 1) {
    expect(await drawAction(IDLE, filled(FORM))).toMatchObject({ status: 'done' });
  }
  ran.mockClear();
  const refused = await drawAction(IDLE, filled(FORM));
  expect(refused).toMatchObject({ status: 'refused', typed: { lot: 'l1', ml: '5' } });
  expect(refused.status === 'refused' && refused.message).toMatch(/Wait \d+ seconds?, .* Nothing was changed\./);
  expect(ran).not.toHaveBeenCalled();
  request.headers.set('x-bench-address', '10.0.0.2');
  expect(await drawAction(IDLE, filled(FORM))).toMatchObject({ status: 'done' });
});

test.each([
  ['no Origin', { origin: null }],
  ['a sealed frame', { origin: 'null' }],
  ['a foreign Origin', { origin: 'http://shop.example' }],
  ['a foreign Host', { host: 'shop.example' }],
  ['a foreign Host with its own Origin', { host: 'shop.example', origin: 'http://shop.example' }],
])('with %s the action does nothing, even where nothing stood in front of it', async (_, changes) => {
  for (const [name, value] of Object.entries(changes)) {
    if (value === null) request.headers.delete(name);
    else request.headers.set(name, value);
  }
  expect(await drawAction(IDLE, filled(FORM))).toMatchObject({ status: 'refused' });
  expect(ran).not.toHaveBeenCalled();
});

test('a form filled in wrong comes back with a sentence per field and what was typed', async () => {
  expect(await drawAction(IDLE, filled({ lot: '', ml: '5' }))).toEqual({
    status: 'invalid',
    typed: { lot: '', ml: '5' },
    fields: { lot: 'Choose a bottle.' },
    message: 'One field needs another look.',
  });
  expect(await drawAction(IDLE, filled({ ...FORM, more: 'x' }))).toMatchObject({ status: 'invalid', fields: {} });
  expect(ran).not.toHaveBeenCalled();
});

test('a tab out of a spreadsheet becomes a space in a form, and is refused of a program', async () => {
  const Named = z.strictObject({ name: typedLine(z.string().trim()), lines: z.string(), password: z.string() });
  const kept = vi.fn(async (_: z.output<typeof Named>) => accept({ message: 'kept' }));
  const sent = { name: 'Neem\tOil\u2028No. 2\r\nnew ', lines: 'one\t1\ntwo', password: 'a\tb' };
  expect(await doorAction({ may: 'spray', form: Named }, kept)(IDLE, filled(sent))).toMatchObject({ status: 'done' });
  expect(kept.mock.calls[0]?.[0]).toEqual({ name: 'Neem Oil No. 2 new', lines: 'one 1\ntwo', password: 'a\tb' });
  expect(oneLine(z.string()).safeParse(sent.name).success).toBe(false);
});

test('what the shop refuses is said in its own words, and what was typed is kept', async () => {
  expect(await drawAction(IDLE, filled({ ...FORM, ml: '500' }))).toEqual({
    status: 'refused',
    typed: { lot: 'l1', ml: '500' },
    message: 'There is no lot "l1" in this shop.',
    faults: [],
  });
});

test('a password that was typed is read, and goes back to no page', async () => {
  const read = vi.fn(async () => refuse({ code: 'not-found', what: 'lot', id: 'l1' }));
  const form = z.strictObject({ user: z.string(), password: z.string().max(9) });
  const action = doorAction({ may: 'own', form }, read);
  const refused = await action(IDLE, filled({ user: 'ana', password: 'secret' }));
  expect(read).toHaveBeenCalledWith({ user: 'ana', password: 'secret' }, { actor: 'owner', personId: null });
  expect(refused).toMatchObject({ status: 'refused', typed: { user: 'ana', password: '' } });
  const invalid = await action(IDLE, filled({ user: 'ana', password: 'much too long' }));
  expect(invalid).toMatchObject({ status: 'invalid', typed: { user: 'ana', password: '' } });
});

test('a fault of ours is told by a reference alone', async () => {
  const log = vi.spyOn(console, 'error').mockImplementation(() => {});
  ran.mockRejectedValueOnce(new Error('the database said something private'));
  const state = await drawAction(IDLE, filled(FORM));
  expect(state).toMatchObject({ status: 'refused', typed: { lot: 'l1', ml: '5' } });
  expect(JSON.stringify(state)).not.toContain('private');
  expect(log.mock.calls.flat().join(' ')).toMatch(/\[[0-9a-f]{8}\]/);
  log.mockRestore();
});

test('what is not a form at all is refused', async () => {
  for (const sent of [[], [IDLE], [null, 'x'], [{}, { lot: 'l1' }]]) {
    expect(await Reflect.apply(drawAction, null, sent)).toMatchObject({ status: 'refused' });
  }
  expect(ran).not.toHaveBeenCalled();
});
