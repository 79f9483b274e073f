'use client';

import { useActionState } from 'react';
import type { OddShown, UnreadShown } from '@/lib/views/unread';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { putRightAction } from './actions';
import styles from './setup.module.css';

/** What a thing that cannot be read should say: each odd value, how it is known, and that somebody looked. */
export function PutRightForm({ shop, thing }: { shop: string; thing: UnreadShown }) {
  const [state, send, isSending] = useActionState(putRightAction, IDLE);
  const { list, id, commandId, key } = thing;
  if (state.status === 'done') return <FormAnswer state={state} />;
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ commandId, shop, list, id }} />
      {thing.odd.map((odd, number) => (
        <OddField key={odd.path} {...{ state, odd, number, prefix: key }} />
      ))}
      <FormField state={state} name="reason" id={`${key}-reason`} label="How you know">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
      </FormField>
      <FormField state={state} name="sure" id={`${key}-sure`} label="I have looked, and this is right">
        {(wiring) => <input {...wiring} type="checkbox" value="yes" />}
      </FormField>
      <FormAnswer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Putting it right…' : 'Put it right'}
        </button>
      </p>
    </form>
  );
}

type OddFieldProps = { state: FormState; odd: OddShown; number: number; prefix: string };

function OddField({ state, odd, number, prefix }: OddFieldProps) {
  const name = `value[${number}]`;
  const hint =
    odd.isYesNo || odd.says === null ? (
      odd.message
    ) : (
      <>
        It says <code>{odd.says}</code>. {odd.message}
      </>
    );
  return (
    <>
      <input type="hidden" name={`path[${number}]`} value={odd.path} />
      <FormField state={state} name={name} id={`${prefix}-${number}`} label={fieldWords(odd.path)} hint={hint}>
        {(wiring) =>
          odd.isYesNo ? (
            <select {...wiring} defaultValue={typedIn(state, name)}>
              <option value="">choose</option>
              <option value="yes">yes</option>
              <option value="no">no</option>
            </select>
          ) : (
            <input {...wiring} defaultValue={typedIn(state, name, odd.proposed)} />
          )
        }
      </FormField>
    </>
  );
}

/** What a field is called on the pages; others by their place in a shop file. */
const WORDS: Readonly<Record<string, string>> = {
  alkaliSilicate: 'Alkali silicate?',
  by: 'Who sprayed',
  customers: 'Do customers come to it?',
  dose: 'Dose',
  enclosed: 'Is it an enclosed space?',
  endedAt: 'Ended at',
  expiresOn: 'Last day, as printed',
  extra: 'Was it an extra mix beside the plan?',
  keptIn: 'Where it stands',
  name: 'Name',
  receivedOn: 'Came on',
  startedAt: 'Began at',
  withdrawn: 'Was it entered in error?',
  'label.phiDays': 'Days before harvest (PHI)',
  'label.reiHours': 'Hours people keep out (REI)',
};

const fieldWords = (path: string): string => WORDS[path] ?? path;
