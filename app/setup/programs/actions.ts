'use server';

import { revalidatePath } from 'next/cache';
import { doorAction } from '@/lib/door/door-action';
import { standingProgram } from '@/lib/views/program-form';
import type { FormState } from '@/shared/forms/form-state';
import { fieldOfProgramPath, ProgramForm, programOfDraft } from '@/shared/forms/program';
import { idFor } from '@/shared/forms/sent-fields';
import { accept } from '@/shared/outcome';
import { saveThing } from '../../_parts/save-thing';

const save = doorAction({ may: 'grow', form: ProgramForm }, async (sent, { actor }) => {
  const id = sent.id ?? idFor(sent.draft.recipes.find(Boolean) ?? '', sent.commandId, 'program');
  const { program, faults } = programOfDraft(id, sent.draft, await standingProgram(sent.shop, sent.id));
  const outcome = await saveThing({
    ...{ sent, actor, faults, part: { programs: [program] }, of: { list: 'programs', id } },
    fieldOf: (path) => fieldOfProgramPath(sent.draft, path),
  });
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'The program is saved.', link: '/setup/programs' });
});

/** Save a program: what is sprayed where, and how often. */
export async function saveProgramAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}
