'use client';

import type { ReactNode } from 'react';
import type { AlertSettingsScreen } from '@/lib/views/alert-settings-form';
import { type AlertDraft, alertsInFields } from '@/shared/forms/alert-settings';
import { FormField } from '../../_parts/form-field';
import { ThingForm } from '../../_parts/thing-form';
import parts from '../../_parts/thing-form.module.css';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import sections from '../shop/settings-form.module.css';
import { saveAlertSettingsAction } from './actions';

/** Where alerts go, and when they must be quiet. */
export function AlertsForm({ screen }: { screen: AlertSettingsScreen }) {
  const form = useThingForm({
    ...{ what: 'alerts', thing: screen.thing, action: saveAlertSettingsAction, initial: screen.draft },
    inFields: alertsInFields,
  });
  return (
    <ThingForm form={form} save="Save the alerts" back="/setup">
      <div className={sections.columns}>
        <Section id="mail" title="E-mail">
          <MailServer form={form} />
          <Person key={screen.thing.standing} form={form} hasPassword={screen.hasPassword} />
          <Line form={form} name="from" label="From" hint="The address that the server sends for." type="email" />
          <Line form={form} name="to" label="To" hint="One address, or several with commas." />
        </Section>
        <div>
          <Section id="program" title="Another program">
            <Line
              form={form}
              name="url"
              label="Its address (webhook)"
              hint="Alerts are posted there as JSON. Empty: to none."
              type="url"
            />
            <Tick form={form} name="urlOwn">
              It is on this computer or in the shop’s own network
            </Tick>
          </Section>
          <Section id="quiet" title="Quiet hours">
            <p className="soft small">Nothing goes then. What still holds at their end goes at their end.</p>
            <div className={parts.pair}>
              <Line form={form} name="quietFrom" label="From" hint="Such as 22:00." />
              <Line form={form} name="quietUntil" label="Until" hint="Such as 06:00." />
            </div>
          </Section>
        </div>
      </div>
    </ThingForm>
  );
}

type FormProps = { form: Form<AlertDraft> };

function MailServer({ form }: FormProps) {
  const { state, draft, change } = form;
  return (
    <>
      <Line form={form} name="host" label="Mail server (SMTP)" hint="Such as mail.example.com. Empty: no e-mail." />
      <div className={parts.pair}>
        <Line form={form} name="port" label="Port" />
        <FormField state={state} name="guard" label="Encryption">
          {(wiring) => (
            <select
              {...wiring}
              value={draft.guard}
              onChange={({ target }) => {
                const { value } = target;
                change((typed) => ({ ...typed, guard: value }));
              }}
            >
              <option value="starttls">STARTTLS, usual at 587</option>
              <option value="tls">TLS, usual at 465</option>
              <option value="none">none</option>
            </select>
          )}
        </FormField>
      </div>
      <Tick form={form} name="mailOwn">
        It is on this computer or in the shop’s own network
      </Tick>
    </>
  );
}

/** The password stands in no draft, so that nothing keeps it in this browser; once it is saved the field is empty. */
function Person({ form, hasPassword }: FormProps & { hasPassword: boolean }) {
  const hint = hasPassword
    ? 'One is saved and is not shown. Empty: keep it.'
    : 'It is saved here, and never shown again.';
  return (
    <div className={parts.pair}>
      <Line form={form} name="user" label="User name" hint="Empty: the server asks for none." />
      <FormField state={form.state} name="password" label="Password" hint={hint}>
        {(wiring) => <input {...wiring} type="password" autoComplete="new-password" maxLength={1000} />}
      </FormField>
    </div>
  );
}

type SectionProps = { id: string; title: string; children: ReactNode };

function Section({ id, title, children }: SectionProps) {
  return (
    <section aria-labelledby={id} className={sections.section}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

type LineProps = FormProps & { name: keyof AlertDraft; label: string; hint?: string; type?: 'email' | 'url' };

function Line({ form: { state, draft, change }, name, label, hint, type }: LineProps) {
  return (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <input
          {...wiring}
          inputMode={type}
          value={draft[name]}
          onChange={({ target }) => {
            const { value } = target;
            change((typed) => ({ ...typed, [name]: value }));
          }}
          autoComplete="off"
        />
      )}
    </FormField>
  );
}

function Tick({
  form: { draft, change },
  name,
  children,
}: FormProps & { name: keyof AlertDraft; children: ReactNode }) {
  return (
    <label className="tick">
      <input
        type="checkbox"
        name={name}
        value="yes"
        checked={draft[name] === 'yes'}
        onChange={({ target }) => {
          const { checked } = target;
          change((typed) => ({ ...typed, [name]: checked ? 'yes' : '' }));
        }}
      />
      {children}
    </label>
  );
}
