'use client';

import { useActionState } from 'react';
import { ROLE_WORDS, ROLES, type Role } from '@/shared/access/roles';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import {
  changeRoleAction,
  invitePersonAction,
  letBackAction,
  loseDeviceAction,
  newPasswordAction,
  stopPersonAction,
  takeBackInvitationAction,
} from './actions';
import styles from './people.module.css';

/** Invites somebody by name and role. What comes of it is a link that works once. */
export function InvitePerson({ shop }: { shop: string }) {
  const [state, send, isSending] = useActionState(invitePersonAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ shop }} />
      <FormField state={state} name="name" label="Name" hint="What this person enters is signed with it.">
        {(wiring) => (
          <input {...wiring} defaultValue={typedIn(state, 'name')} maxLength={60} autoComplete="off" required />
        )}
      </FormField>
      <FormField state={state} name="role" label="What this person does here">
        {(wiring) => <RoleChoice wiring={wiring} role={typedIn(state, 'role', 'sprayer')} />}
      </FormField>
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Inviting…' : 'Make an invitation'}
      </button>
    </form>
  );
}

const RoleChoice = ({ wiring, role }: { wiring: object; role: string }) => (
  <select key={role} {...wiring} defaultValue={role}>
    {ROLES.map((one) => (
      <option key={one} value={one}>
        {ROLE_WORDS[one].name}: {ROLE_WORDS[one].may}
      </option>
    ))}
  </select>
);

type ChangeProps = { shop: string; person: string; name: string; role: Role };

/** Gives somebody another role. */
export function ChangeRole({ shop, person, name, role }: ChangeProps) {
  const [state, send, isSending] = useActionState(changeRoleAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ shop, person }} />
      <FormField state={state} name="role" id={`role-${person}`} label={`What ${name} does here`}>
        {(wiring) => <RoleChoice wiring={wiring} role={role} />}
      </FormField>
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending}>
        Change the role
      </button>
    </form>
  );
}

type Act = (state: FormState, form: FormData) => Promise<FormState>;

/** What takes one press about somebody: what the button says, and who it is about for those who only hear it. */
const DEEDS: Record<'new-password' | 'stop' | 'let-back' | 'take-back', { act: Act; text: string }> = {
  'new-password': { act: newPasswordAction, text: 'Forgot the password: make a link' },
  stop: { act: stopPersonAction, text: 'Works here no more: sign out everywhere' },
  'let-back': { act: letBackAction, text: 'Works here again' },
  'take-back': { act: takeBackInvitationAction, text: 'Take it back' },
};

type OneButtonProps = { of: Readonly<Record<string, string>>; what: keyof typeof DEEDS; name: string };

/** One press about one person. */
export function OneButton({ of, what, name }: OneButtonProps) {
  const { act, text } = DEEDS[what];
  const [state, send, isSending] = useActionState(act, IDLE);
  return (
    <form action={send}>
      <HiddenFields of={of} />
      <FormAnswer state={state} />
      {state.status === 'invalid' && state.fields.person && <p className="grave">{state.fields.person}</p>}
      <button type="submit" disabled={isSending} aria-label={`${text} (${name})`}>
        {text}
      </button>
    </form>
  );
}

type LostProps = { shop: string; device: { id: string; name: string }; owner: string };

/** A device is lost: one press ends what it is signed in to. */
export function LostDevice({ shop, device, owner }: LostProps) {
  const [state, send, isSending] = useActionState(loseDeviceAction, IDLE);
  return (
    <form action={send}>
      <HiddenFields of={{ shop, device: device.id }} />
      {state.status !== 'done' && <FormAnswer state={state} />}
      <button type="submit" disabled={isSending} aria-label={`Lost: sign out ${device.name} of ${owner}`}>
        Lost: sign it out
      </button>
    </form>
  );
}
