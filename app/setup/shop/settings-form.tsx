'use client';

import type { ReactNode } from 'react';
import type { SettingsFormScreen } from '@/lib/views/settings-form';
import { BLANK_CONTACT, BLANK_SPECIAL_DAY, type SettingsDraft, settingsInFields } from '@/shared/forms/shop-settings';
import { WEEKDAYS } from '@/shared/time/day';
import { FormField } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { ThingForm } from '../../_parts/thing-form';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import { saveSettingsAction } from './actions';
import { SettingsFolds } from './settings-folds';
import styles from './settings-form.module.css';
import { SettingsLine as Line, Typed } from './settings-line';

/** A row more than there is, of each list. */
const withRoom = (draft: SettingsDraft): SettingsDraft => ({
  ...draft,
  specialDays: [...draft.specialDays, BLANK_SPECIAL_DAY],
  contacts: [...draft.contacts, BLANK_CONTACT],
});

/** What the shop says about itself: its name and clock, when customers are in, its water, its days and its money. */
export function SettingsForm({ screen }: { screen: SettingsFormScreen }) {
  const form = useThingForm({
    ...{ what: 'the shop itself', thing: screen.thing, action: saveSettingsAction, initial: withRoom(screen.settings) },
    inFields: settingsInFields,
  });
  return (
    <ThingForm form={form} save="Save the shop" back="/setup">
      <HiddenFields of={{ currency: screen.currency }} />
      <div className={styles.columns}>
        <div>
          <Section id="named" title="Name and clock">
            <Line form={form} name="name" label="What it is called" />
            <Line form={form} name="timeZone" label="Time zone" hint="Region and city, such as America/New_York." />
            <Units form={form} />
          </Section>
          <Section id="water" title="Water">
            <Line
              form={form}
              name="alkalinity"
              label="Alkalinity, mg/L as CaCO3"
              hint="From a test kit or the water report."
            />
            <Line form={form} name="waterPh" label="pH" hint="As it comes from the tap. Both empty: never measured." />
          </Section>
          <Section id="days" title="Days and money">
            <Line
              form={form}
              name="safetyDays"
              label="Safety days"
              hint="So many days before it is needed, stock is in."
            />
            <Line
              form={form}
              name="wagePerHour"
              label={`Wage an hour, ${screen.currency}`}
              hint="Empty: labour is not known."
            />
            <Line
              form={form}
              name="sameModeInARow"
              label="Same mode of action in a row"
              hint="At most so often on one bench."
            />
            <Line
              form={form}
              name="capitalPerYear"
              label="Money tied up costs a year"
              hint="As a fraction: 0.1 is 10 %."
            />
          </Section>
        </div>
        <Section id="open" title="When customers are in">
          <p className="soft small">
            Such as 09:00-18:00 or 9am-6pm; two with a comma: 09:00-12:00, 14:00-18:00. Empty: closed that day.
          </p>
          {WEEKDAYS.map((weekday) => (
            <Hours key={weekday} form={form} weekday={weekday} />
          ))}
        </Section>
      </div>
      <SettingsFolds form={form} />
    </ThingForm>
  );
}

function Section({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section aria-labelledby={id} className={styles.section}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

function Units({ form: { state, draft, change } }: { form: Form<SettingsDraft> }) {
  return (
    <FormField state={state} name="units" label="Units to show">
      {(wiring) => (
        <select
          {...wiring}
          value={draft.units}
          onChange={({ target }) => change((typed) => ({ ...typed, units: target.value }))}
        >
          <option value="us">US: gallons and pounds</option>
          <option value="metric">metric: litres and kilograms</option>
        </select>
      )}
    </FormField>
  );
}

const DAYS = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

function Hours({ form, weekday }: { form: Form<SettingsDraft>; weekday: keyof typeof DAYS }) {
  const { state, draft, change } = form;
  return (
    <FormField state={state} name={`open-${weekday}`} label={DAYS[weekday]}>
      {(wiring) => (
        <Typed
          wiring={wiring}
          value={draft.hours[weekday]}
          onChange={(value) => change((typed) => ({ ...typed, hours: { ...typed.hours, [weekday]: value } }))}
        />
      )}
    </FormField>
  );
}
