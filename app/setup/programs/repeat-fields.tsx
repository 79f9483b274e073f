'use client';

import type { ProgramDraft } from '@/shared/forms/program';
import { WEEKDAYS } from '@/shared/time/day';
import { FormField } from '../../_parts/form-field';
import parts from '../../_parts/thing-form.module.css';
import type { ThingForm as Form } from '../../_parts/use-thing-form';
import styles from './program-form.module.css';

const KINDS = [
  ['once', 'Once, on the first day'],
  ['weeks', 'On days of the week'],
  ['days', 'Every so many days'],
  ['rule', 'By a rule (RFC 5545)'],
] as const;

const DAYS = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };

type RepeatFieldsProps = { form: Form<ProgramDraft> };

/** How often a program sprays. Only what belongs to the chosen way is shown; without scripts, all of it is. */
export function RepeatFields({ form }: RepeatFieldsProps) {
  const { draft, change } = form;
  return (
    <fieldset className={styles.repeat}>
      <legend className={styles.legend}>How often</legend>
      <div className={parts.ticks}>
        {KINDS.map(([kind, title]) => (
          <label key={kind} className="tick">
            <input
              type="radio"
              name="kind"
              value={kind}
              checked={draft.kind === kind}
              onChange={() => change((typed) => ({ ...typed, kind }))}
            />
            {title}
          </label>
        ))}
      </div>
      <div className={draft.kind === 'weeks' ? undefined : parts.scriptless}>
        <Weekdays form={form} />
        <Typed form={form} name="everyWeeks" label="Every so many weeks" hint="1: each week." />
      </div>
      <div className={draft.kind === 'days' ? undefined : parts.scriptless}>
        <Typed form={form} name="everyDays" label="Every so many days" hint="Counted from the first day." />
      </div>
      <div className={draft.kind === 'rule' ? undefined : parts.scriptless}>
        <Typed form={form} name="rule" label="Rule" hint="Such as FREQ=MONTHLY;BYDAY=1TU for the first Tuesday." />
      </div>
    </fieldset>
  );
}

function Weekdays({ form: { draft, change } }: RepeatFieldsProps) {
  const toggle = (day: string) =>
    change((typed) => ({
      ...typed,
      weekdays: typed.weekdays.includes(day) ? typed.weekdays.filter((one) => one !== day) : [...typed.weekdays, day],
    }));
  return (
    <div className={styles.weekdays}>
      {WEEKDAYS.map((weekday, number) => (
        <label key={weekday} className="tick">
          <input
            type="checkbox"
            name={`weekdays[${number}].day`}
            value={weekday}
            checked={draft.weekdays.includes(weekday)}
            onChange={() => toggle(weekday)}
          />
          {DAYS[weekday]}
        </label>
      ))}
    </div>
  );
}

type TypedProps = RepeatFieldsProps & { name: 'everyWeeks' | 'everyDays' | 'rule'; label: string; hint: string };

function Typed({ form: { state, draft, change }, name, label, hint }: TypedProps) {
  return (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <input
          {...wiring}
          value={draft[name]}
          onChange={({ target }) => change((typed) => ({ ...typed, [name]: target.value }))}
          inputMode={name === 'rule' ? 'text' : 'numeric'}
          autoComplete="off"
          spellCheck={false}
        />
      )}
    </FormField>
  );
}
