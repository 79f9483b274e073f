'use client';

import type { Asked } from '@/shared/forms/product-asks';
import styles from './product-form.module.css';
import { ChoiceField, LinesField, TextField } from './typed';

/** The fields of a product that not every kind is asked for up front, by what they ask. */
export const ASKED_FIELDS: Record<Asked, readonly string[]> = {
  formulation: ['formulation'],
  silicate: ['alkaliSilicate'],
  density: ['densityGPerMl'],
  spoon: ['gramsPerTeaspoon'],
  limits: ['label.phiDays', 'label.maxApplicationsPerYear', 'label.minDaysBetween'],
  modes: ['label.modes'],
  safety: ['label.signalWord', 'label.protectiveEquipment'],
  sprayPh: ['label.sprayPh.min', 'label.sprayPh.max'],
  notWith: ['label.doNotMixWith'],
  registration: ['label.registration'],
  heat: ['label.hotAboveC'],
  aid: ['label.firstAid', 'label.storage'],
};

const SILICATE = [
  ['no', 'no'],
  ['yes', 'yes: it goes first into plain water'],
] as const;

/** What one of them asks, in the words of the label. */
export function AskedField({ asked }: { asked: Asked }) {
  switch (asked) {
    case 'formulation':
      return (
        <TextField
          name="formulation"
          label="Formulation class"
          hint="The letters on the label: EC, SC, WP, WDG, SL …"
        />
      );
    case 'silicate':
      return <ChoiceField name="alkaliSilicate" label="Alkali silicate?" choices={SILICATE} otherwise="no" />;
    case 'density':
      return (
        <TextField name="densityGPerMl" label="Density, g/mL" hint="Water is 1. On the safety data sheet." number />
      );
    case 'spoon':
      return (
        <TextField
          name="gramsPerTeaspoon"
          label="Grams in a level teaspoon"
          hint="Never measured? Keep the product first, then weigh a few spoons."
          number
        />
      );
    case 'limits':
      return (
        <>
          <TextField name="label.phiDays" label="Days before harvest (PHI)" number />
          <TextField name="label.maxApplicationsPerYear" label="Most times in 365 days" number />
          <TextField name="label.minDaysBetween" label="Fewest days between two" number />
        </>
      );
    case 'modes':
      return <LinesField name="label.modes" label="Modes of action" hint="One a line, with its scheme: IRAC 3A." />;
    case 'safety':
      return (
        <>
          <TextField name="label.signalWord" label="Signal word" hint="CAUTION, WARNING or DANGER, as printed." />
          <LinesField name="label.protectiveEquipment" label="What to wear" hint="One piece a line, such as gloves." />
        </>
      );
    case 'sprayPh':
      return (
        <div className={styles.pair}>
          <TextField name="label.sprayPh.min" label="Spray pH, lowest" number />
          <TextField name="label.sprayPh.max" label="Spray pH, highest" number />
        </div>
      );
    case 'notWith':
      return (
        <LinesField
          name="label.doNotMixWith"
          label="Never in one tank with"
          hint="One a line: a product, a substance, a kind or a formulation, such as sulfur."
        />
      );
    case 'registration':
      return <TextField name="label.registration" label="Registration number" />;
    case 'heat':
      return <HeatField />;
    case 'aid':
      return <AidFields />;
  }
}

const HeatField = () => (
  <TextField
    name="label.hotAboveC"
    label="Never above this temperature"
    hint="With its letter, such as 85 F or 29.5 C. Without one it is in the shop’s own."
  />
);

const AidFields = () => (
  <>
    <TextField name="label.firstAid" label="First aid" hint="As the label says it. One tap away when it is needed." />
    <TextField name="label.storage" label="How to store it" hint="Such as: locked, dry, above freezing." />
  </>
);
