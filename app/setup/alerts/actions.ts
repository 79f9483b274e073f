'use server';

import { revalidatePath } from 'next/cache';
import { forgetTries } from '@/lib/alerts/tries';
import { tryAlerts } from '@/lib/alerts/try-alerts';
import { clock } from '@/lib/clock';
import { saveAlertSettings } from '@/lib/commands/save-alert-settings';
import { doorAction } from '@/lib/door/door-action';
import { AlertSettingsForm, alertsOfDraft, TryAlerts } from '@/shared/forms/alert-settings';
import type { FormState } from '@/shared/forms/form-state';
import { accept, refuse } from '@/shared/outcome';
import { wentInWords } from '../../_parts/way-names';

const save = doorAction(
  { may: 'own', form: AlertSettingsForm },
  async ({ commandId, shop, standing, draft: typed }, { actor }) => {
    const { settings, faults } = alertsOfDraft(typed);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const outcome = await saveAlertSettings({ commandId, shopId: shop, actor, settings, expecting: standing }, clock);
    if (!outcome.ok) return outcome;
    forgetTries(shop);
    revalidatePath('/setup/alerts');
    return accept({ message: 'Saved. Send a test to see whether it arrives.' });
  },
);

/** Save where alerts go. */
export async function saveAlertSettingsAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}

const test = doorAction({ may: 'own', form: TryAlerts }, async ({ shop }) => {
  const outcome = await tryAlerts(shop, clock);
  if (!outcome.ok) return outcome;
  const { value } = outcome;
  if (value.length === 0)
    return refuse({ code: 'not-handed-over', said: 'Nothing is set up yet. Fill in one way, save it, and try again.' });
  const said = value.map(wentInWords).join(' ');
  return value.every(({ ok }) => ok) ? accept({ message: said }) : refuse({ code: 'not-handed-over', said });
});

/** Hand a test over in every way that is saved, and say what happened. */
export async function tryAlertsAction(state: FormState, form: FormData): Promise<FormState> {
  return test(state, form);
}
