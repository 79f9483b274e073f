import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { openedSettings } from '@/lib/views/thing-form';
import { draftOfSettings, type SettingsDraft, settingsOfDraft } from '@/shared/forms/shop-settings';
import { draftOfTools, toolsOfDraft } from '@/shared/forms/tools';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop } from './small-shop';

/** The form of the shop itself, opened, and what sending it does. */
async function opened(shopId: string) {
  const { shop } = await shopFileOf(shopId);
  const draft = draftOfSettings(shop);
  const { standing } = openedSettings(shopId, shop, settingsOfDraft(draft).shop);
  const send = (typed: Partial<SettingsDraft>) => save(shopId, settingsOfDraft({ ...draft, ...typed }).shop, standing);
  return { send };
}

const save = (shopId: string, shop: object, standing: string) =>
  changeShop(
    { commandId: newId(), shopId, part: { shop }, expecting: [{ list: 'shop', id: 'shop', fingerprint: standing }] },
    CLOCK,
  );

test('of two people who change the shop, the second is told, and nothing of hers is written', async () => {
  const shopId = await smallShop(SMALL);
  const [one, other] = [await opened(shopId), await opened(shopId)];
  expect(await one.send({ contact: 'Ada, 555 0100' })).toMatchObject({ ok: true });
  expect(await other.send({ contact: 'Ben, 555 0101' })).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  expect((await shopFileOf(shopId)).shop.contact).toBe('Ada, 555 0100');
  const again = await opened(shopId);
  expect(await again.send({ contact: 'Ben, 555 0101' })).toMatchObject({ ok: true });
});

test('whoever changes the tools is not in the way of whoever changes the rest', async () => {
  const shopId = await smallShop(SMALL);
  const rest = await opened(shopId);
  const { shop } = await shopFileOf(shopId);
  const tools = toolsOfDraft({ ...draftOfTools(shop), dropMl: '0.04' }).shop;
  const { standing } = openedSettings(shopId, shop, tools);
  expect(await save(shopId, tools, standing)).toMatchObject({ ok: true });
  expect(await rest.send({ contact: 'Ada' })).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).shop).toMatchObject({ dropMl: 0.04, contact: 'Ada' });
  expect(await save(shopId, { ...tools, dropMl: 0.03 }, standing)).toMatchObject({
    refusal: { code: 'changed-meanwhile' },
  });
});

test('what was entered can be emptied again', async () => {
  const shopId = await smallShop(SMALL);
  const full = {
    ...{ address: '1 Quarry Lane', medical: 'Valley Clinic', oilHotC: '30 C', minutesPerPlant: '0.25' },
    highs: Array.from({ length: 12 }, (_, month) => `${month - 3} C`),
    specialDays: [{ on: '2026-12-25', name: 'Holiday', hours: '' }],
    contacts: [{ name: 'Ada', phone: '555 0100' }],
  };
  expect(await (await opened(shopId)).send(full)).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).shop).toMatchObject({
    ...{ address: '1 Quarry Lane', oilHotC: 30, minutesPerPlant: 0.25 },
    monthlyHighsC: [-3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8],
    specialDays: [{ on: '2026-12-25', name: 'Holiday', hours: [] }],
    emergency: { contacts: [{ name: 'Ada', phone: '555 0100' }], medical: 'Valley Clinic', poisonLine: null },
  });
  const empty = { address: '', medical: '', oilHotC: '', minutesPerPlant: '', specialDays: [], contacts: [] };
  expect(await (await opened(shopId)).send({ ...empty, highs: Array.from({ length: 12 }, () => '') })).toMatchObject({
    ok: true,
  });
  expect((await shopFileOf(shopId)).shop).toMatchObject({
    ...{ address: null, oilHotC: 29.5, minutesPerPlant: null, monthlyHighsC: null, specialDays: [] },
    emergency: { contacts: [], medical: null },
  });
});
