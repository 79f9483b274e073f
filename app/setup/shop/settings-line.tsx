import type { SettingsDraft } from '@/shared/forms/shop-settings';
import { FormField, type Wiring } from '../../_parts/form-field';
import type { ThingForm as Form } from '../../_parts/use-thing-form';

type LineProps = {
  form: Form<SettingsDraft>;
  name: Exclude<keyof SettingsDraft, 'hours' | 'highs' | 'specialDays' | 'contacts'>;
  label: string;
  hint?: string;
};

/** A setting that is one line of text. */
export function SettingsLine({ form: { state, draft, change }, name, label, hint }: LineProps) {
  return (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <Typed
          wiring={wiring}
          value={draft[name]}
          onChange={(value) => change((typed) => ({ ...typed, [name]: value }))}
        />
      )}
    </FormField>
  );
}

type TypedProps = { wiring: Wiring; value: string; onChange: (value: string) => void };

export function Typed({ wiring, value, onChange }: TypedProps) {
  return <input {...wiring} value={value} onChange={({ target }) => onChange(target.value)} autoComplete="off" />;
}
