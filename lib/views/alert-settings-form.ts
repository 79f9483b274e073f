import 'server-only';
import { type AlertWay, waysOf } from '@/shared/alerts/alert-settings';
import { type AlertDraft, draftOfAlerts } from '@/shared/forms/alert-settings';
import type { Clock } from '../clock';
import { alertSettingsOf } from '../data/alert-settings';
import { newCommandId } from '../data/new-id';
import { type HereNow, shopNow } from './house';
import type { ThingOpened } from './thing-form';

export type AlertSettingsScreen = Pick<HereNow, 'today' | 'ways'> & {
  thing: ThingOpened;
  draft: AlertDraft;
  /** Whether there is a password; what it is goes to no page. */
  hasPassword: boolean;
  /** The ways that are set up. */
  setUp: AlertWay[];
};

/** Where the alerts of the shop go, for its form. Null when there is no shop. */
export async function alertSettingsScreen(clock: Clock): Promise<AlertSettingsScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const saved = await alertSettingsOf(here.id);
  return {
    ...{ today: here.today, ways: here.ways },
    thing: { commandId: newCommandId(), shop: here.id, id: 'alerts', standing: saved?.savedAt ?? '' },
    draft: draftOfAlerts(saved?.settings ?? null),
    hasPassword: (saved?.settings.mail?.password ?? null) !== null,
    setUp: saved ? waysOf(saved.settings) : [],
  };
}
