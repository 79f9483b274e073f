import type { ReactNode } from 'react';
import {
  BLANK_CONTACT,
  BLANK_SPECIAL_DAY,
  type ContactTyped,
  type SettingsDraft,
  type SpecialDayTyped,
} from '@/shared/forms/shop-settings';
import { MONTHS } from '@/shared/time/civil';
import { Fold } from '../../_parts/fold';
import { FormField } from '../../_parts/form-field';
import type { ThingForm as Form } from '../../_parts/use-thing-form';
import { ToolRows } from '../tools/tool-rows';
import styles from './settings-form.module.css';
import { SettingsLine as Line, Typed } from './settings-line';

type Props = { form: Form<SettingsDraft> };

/** What is entered once and seldom looked at again: each part shut, with a few words of what is in it. */
export function SettingsFolds({ form }: Props) {
  const { draft } = form;
  return (
    <div className={styles.folds}>
      <Part form={form} title="Holidays and days of their own" digest={daysIn(draft)} holds={/^specialDays/}>
        <SpecialDays form={form} />
      </Part>
      <Part form={form} title="How long work takes" digest={workIn(draft)} holds={/^minutes/}>
        <Line
          form={form}
          name="minutesPerPlant"
          label="Minutes for each plant"
          hint="Such as 0.25. With the wage, they price a mix that no program planned."
        />
        <Line
          form={form}
          name="minutesPerBatch"
          label="Minutes for each batch"
          hint="Mixing and cleaning up, such as 20."
        />
      </Part>
      <Part form={form} title="Heat, oil and sulfur" digest={heatIn(draft)} holds={/^(high-|oil)/}>
        <Heat form={form} />
      </Part>
      <Part
        form={form}
        title="Where it is, and whom to ask"
        digest={placeIn(draft)}
        holds={/^(address|contact|keepRecordsYears)$/}
      >
        <Line form={form} name="address" label="Address" hint="For its records and notices." />
        <Line form={form} name="contact" label="Whom to ask about a closed bench" hint="Name and telephone." />
        <Line form={form} name="keepRecordsYears" label="Years that records are kept" hint="At least 2." />
      </Part>
      <Part form={form} title="In an emergency" digest={helpIn(draft)} holds={/^(contacts|medical|poisonLine)/}>
        <Emergency form={form} />
      </Part>
    </div>
  );
}

type PartProps = Props & { title: string; digest: string; holds: RegExp; children: ReactNode };

function Part({ form: { state }, title, digest, holds, children }: PartProps) {
  const isFaulty = state.status === 'invalid' && Object.keys(state.fields).some((field) => holds.test(field));
  return <Fold {...{ title, digest, isOpen: isFaulty }}>{children}</Fold>;
}

const counted = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
const isTyped = (text: string): boolean => text.trim() !== '';

const daysIn = ({ specialDays }: SettingsDraft): string =>
  counted(specialDays.filter(({ on }) => isTyped(on)).length, 'day');
const workIn = ({ minutesPerPlant, minutesPerBatch }: SettingsDraft): string =>
  isTyped(minutesPerPlant) && isTyped(minutesPerBatch)
    ? `${minutesPerPlant} for each plant, ${minutesPerBatch} for each batch`
    : 'not known yet: labour is priced for planned sprayings only';
const heatIn = ({ highs, oilHotC, oilSulfurDays }: SettingsDraft): string =>
  `${highs.every(isTyped) ? 'twelve months' : 'months not known'}; oils below ${oilHotC}, ${oilSulfurDays} days from sulfur`;
const placeIn = ({ address, contact }: SettingsDraft): string =>
  [address, contact].filter(isTyped).join('; ') || 'nothing yet';
const helpIn = ({ contacts, poisonLine }: SettingsDraft): string =>
  [...contacts.map(({ name }) => name), isTyped(poisonLine) ? 'poison line' : ''].filter(isTyped).join(', ') ||
  'nobody yet';

const SPECIAL_DAY = [
  { column: 'on', label: 'Day', like: '', type: 'date' },
  { column: 'name', label: 'Called', like: 'Harvest fair' },
  { column: 'hours', label: 'Open', like: 'closed' },
] as const;

function SpecialDays({ form: { state, draft, change } }: Props) {
  return (
    <>
      <p className="soft small">Their hours hold instead of the weekday’s. Empty hours: closed that day.</p>
      <ToolRows<SpecialDayTyped>
        {...{ state, list: 'specialDays', title: 'Days', columns: SPECIAL_DAY, rows: draft.specialDays }}
        blank={BLANK_SPECIAL_DAY}
        add="Add a day"
        onChange={(next) => change((typed) => ({ ...typed, specialDays: next(typed.specialDays) }))}
      />
    </>
  );
}

function Heat({ form }: Props) {
  const { state, draft, change } = form;
  return (
    <>
      <Line
        form={form}
        name="oilSulfurDays"
        label="Days between oil and sulfur"
        hint="At least, on one bench. Usual is 30; a label may ask for more."
      />
      <Line form={form} name="oilHotC" label="Too hot for oils and soaps from" hint="Such as 85 F or 29.5 C." />
      <fieldset>
        <legend>Usual highest temperature where the plants stand</legend>
        <p className="soft small">All twelve months, or none. Such as 85 F or 29.5 C.</p>
        <div className={styles.months}>
          {MONTHS.map((month, at) => (
            <FormField key={month} state={state} name={`high-${at + 1}`} label={month}>
              {(wiring) => (
                <Typed
                  wiring={wiring}
                  value={draft.highs[at] ?? ''}
                  onChange={(high) =>
                    change((typed) => ({
                      ...typed,
                      highs: typed.highs.map((one, month) => (month === at ? high : one)),
                    }))
                  }
                />
              )}
            </FormField>
          ))}
        </div>
      </fieldset>
    </>
  );
}

const CONTACT = [
  { column: 'name', label: 'Who to call', like: 'Owner' },
  { column: 'phone', label: 'Telephone', like: '' },
] as const;

function Emergency({ form }: Props) {
  const { state, draft, change } = form;
  return (
    <>
      <ToolRows<ContactTyped>
        {...{
          state,
          list: 'contacts',
          title: 'Who to call, the first one first',
          columns: CONTACT,
          rows: draft.contacts,
        }}
        blank={BLANK_CONTACT}
        add="Add somebody"
        onChange={(next) => change((typed) => ({ ...typed, contacts: next(typed.contacts) }))}
      />
      <Line form={form} name="medical" label="Nearest medical facility" hint="Name, address and telephone." />
      <Line form={form} name="poisonLine" label="Poison line" />
    </>
  );
}
