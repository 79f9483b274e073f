'use server';

import { revalidatePath } from 'next/cache';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { fieldOfSettingsPath, SettingsForm, settingsOfDraft } from '@/shared/forms/shop-settings';
import { fieldOfToolsPath, ToolsForm, toolsOfDraft } from '@/shared/forms/tools';
import { accept } from '@/shared/outcome';
import { saveThing } from '../../_parts/save-thing';

const THE_SHOP = { list: 'shop', id: 'shop' } as const;

const saveSettings = doorAction({ may: 'own', form: SettingsForm }, async (sent, { actor }) => {
  const { shop, faults } = settingsOfDraft(sent.draft);
  const outcome = await saveThing({
    ...{ sent, actor, faults, part: { shop }, of: THE_SHOP },
    fieldOf: (path) => fieldOfSettingsPath(sent.draft, path),
  });
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'The shop is saved.', link: '/setup' });
});

/** Save what the shop says about itself. */
export async function saveSettingsAction(state: FormState, form: FormData): Promise<FormState> {
  return saveSettings(state, form);
}

const saveTools = doorAction({ may: 'own', form: ToolsForm }, async (sent, { actor }) => {
  const { shop, faults } = toolsOfDraft(sent.draft);
  const fieldOf = (path: string) => fieldOfToolsPath(sent.draft, path);
  const outcome = await saveThing({ ...{ sent, actor, faults, part: { shop }, of: THE_SHOP }, fieldOf });
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'The tools are saved.', link: '/setup' });
});

/** Save what the shop sprays and measures with. */
export async function saveToolsAction(state: FormState, form: FormData): Promise<FormState> {
  return saveTools(state, form);
}
