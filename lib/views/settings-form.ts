import 'server-only';
import { draftOfSettings, type SettingsDraft } from '@/shared/forms/shop-settings';
import { draftOfTools, type ToolsDraft } from '@/shared/forms/tools';
import type { Clock } from '../clock';
import { shopNow } from './house';
import { openedThing, type ThingOpened } from './thing-form';

export type SettingsFormScreen = { thing: ThingOpened; settings: SettingsDraft; tools: ToolsDraft; currency: string };

/** What the forms of the shop's own settings and of its tools need. Gives null when there is no shop. */
export async function settingsFormScreen(clock: Clock): Promise<SettingsFormScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop } = here.file;
  const thing = openedThing(here.id, { id: 'shop', ...shop });
  return { thing, settings: draftOfSettings(shop), tools: draftOfTools(shop), currency: shop.currency };
}
