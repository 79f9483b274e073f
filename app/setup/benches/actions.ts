'use server';

import { revalidatePath } from 'next/cache';
import { doorAction } from '@/lib/door/door-action';
import { BenchForm, benchOfDraft, fieldOfBenchPath } from '@/shared/forms/bench';
import type { FormState } from '@/shared/forms/form-state';
import { idFor } from '@/shared/forms/sent-fields';
import { accept } from '@/shared/outcome';
import { saveThing } from '../../_parts/save-thing';

const save = doorAction({ may: 'grow', form: BenchForm }, async (sent, { actor }) => {
  const id = sent.id ?? idFor(sent.draft.name, sent.commandId, 'bench');
  const { bench, faults } = benchOfDraft(id, sent.draft);
  const outcome = await saveThing({
    ...{ sent, actor, faults, part: { benches: [bench] }, of: { list: 'benches', id } },
    fieldOf: (path) => fieldOfBenchPath(sent.draft, path),
  });
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: `${bench.name} is saved.`, link: '/setup/benches' });
});

/** Save a bench with what stands on it. */
export async function saveBenchAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}
