import 'server-only';
import { draftOfSettings, type SettingsDraft, settingsOfDraft } from '@/shared/forms/shop-settings';
import { draftOfTools, type ToolsDraft, toolsOfDraft } from '@/shared/forms/tools';
import type { Clock } from '../clock';
import { shopNow } from './house';
import { openedSettings, type ThingOpened } from './thing-form';

export type SettingsFormScreen = { thing: ThingOpened; settings: SettingsDraft; currency: string };
export type ToolsFormScreen = { thing: ThingOpened; tools: ToolsDraft };

/** What the form of the shop's own settings needs. Gives null when there is no shop. */
export async function settingsFormScreen(clock: Clock): Promise<SettingsFormScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop } = here.file;
  const settings = draftOfSettings(shop);
  return {
    thing: openedSettings(here.id, shop, settingsOfDraft(settings).shop),
    ...{ settings, currency: shop.currency },
  };
}

/** What the form of the shop's tools needs. Gives null when there is no shop. */
export async function toolsFormScreen(clock: Clock): Promise<ToolsFormScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop } = here.file;
  const tools = draftOfTools(shop);
  return { thing: openedSettings(here.id, shop, toolsOfDraft(tools).shop), tools };
}
