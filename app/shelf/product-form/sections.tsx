'use client';

import { type Asked, askedOf, contentsOf } from '@/shared/forms/product-asks';
import { digestOf } from '@/shared/forms/product-unknowns';
import { ASKED_FIELDS, AskedField } from './label-fields';
import styles from './product-form.module.css';
import { Rows } from './rows';
import { Section } from './section';
import { ChoiceField, LinesField, TextField, useTyping } from './typed';

type Draft = Record<string, string>;
type SectionsProps = { change: (next: (draft: Draft) => Draft) => void; isNew: boolean };

const BASES = ['% w/w', '% w/v', '% v/v', 'g/L', 'g/kg', 'lb/gal'].map((basis) => [basis, basis] as const);
const LABEL: readonly Asked[] = ['limits', 'modes', 'safety', 'sprayPh', 'notWith', 'registration', 'heat', 'aid'];
const ELSE: readonly Asked[] = ['formulation', 'silicate', 'density', 'spoon'];

/** Everything of a product beside its name: what its kind needs up front, and the rest behind "more". */
export function Sections({ change, isNew }: SectionsProps) {
  const { draft } = useTyping();
  const asked = askedOf(draft.kind ?? '', draft.form ?? '');
  const upFront = (of: readonly Asked[]) => of.filter((one) => asked.has(one));
  const later = (of: readonly Asked[]) => of.filter((one) => !asked.has(one));
  const weight = upFront(['density', 'spoon']);
  const more = later(LABEL);
  return (
    <>
      <ContentsSection change={change} asked={upFront(['formulation', 'silicate'])} />
      {weight.length > 0 && (
        <Section title="How heavy it is" digest={digestOf(draft, 'weight')} holds={among(weight)}>
          <AskedFields of={weight} />
        </Section>
      )}
      <LabelSection change={change} asked={upFront(LABEL)} />
      <Section title="How long it keeps" digest={digestOf(draft, 'keeping')} holds={startsWith('shelfLife.')}>
        <div className={styles.pair}>
          <TextField
            name="shelfLife.unopenedDays"
            label="Days unopened"
            hint="From the day it came, such as 730 or 2 years."
          />
          <TextField name="shelfLife.openedDays" label="Days once opened" />
        </div>
      </Section>
      {more.length > 0 && (
        <Section title="More from the label" digest={toldOf(draft, more)} holds={among(more)}>
          <AskedFields of={more} />
        </Section>
      )}
      <Section title="Bar codes and the rest" digest={digestOf(draft, 'rest')} holds={among(later(ELSE), ...REST)}>
        <LinesField
          name="gtins"
          label="Numbers under its bar codes"
          hint="One a line, with or without spaces. A code belongs to one product."
        />
        <AskedFields of={later(ELSE)} />
        <TextField
          name="mixOrder"
          label="Place in the order of mixing"
          hint="Only when the usual order is wrong for it: 1 is first."
          number
        />
        <MadeFrom change={change} />
        {isNew ? (
          <input type="hidden" name="archived" value={draft.archived ?? 'no'} />
        ) : (
          <ChoiceField name="archived" label="Put away?" choices={AWAY} otherwise="no" />
        )}
      </Section>
    </>
  );
}

/** What a stock solution is made from stays with it, and can be corrected. */
function MadeFrom({ change }: Pick<SectionsProps, 'change'>) {
  const { draft } = useTyping();
  if (!Object.keys(draft).some((name) => name.startsWith('madeFrom['))) return null;
  return (
    <>
      <p className={styles.legend}>What this stock solution is made from</p>
      <Rows list="madeFrom" one="source" draft={draft} change={change}>
        {(row) => (
          <div className={styles.pair}>
            <TextField name={`${row}.product`} label="Product, by its id" />
            <TextField name={`${row}.dose`} label="How much it holds" />
          </div>
        )}
      </Rows>
    </>
  );
}

const REST = ['gtins', 'mixOrder', 'archived'];
const AWAY = [
  ['no', 'no, it is in use'],
  ['yes', 'yes: offered nowhere any more'],
] as const;

function ContentsSection({ change, asked }: Pick<SectionsProps, 'change'> & { asked: Asked[] }) {
  const { draft } = useTyping();
  const { label, hint, names } = contentsOf(draft.kind ?? '');
  const holds = (name: string) => name.startsWith('contents[') || among(asked)(name);
  return (
    <Section title={label} digest={digestOf(draft, 'contents')} holds={holds}>
      <p className="soft small">{hint}</p>
      <datalist id="substances">
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <Rows list="contents" one="substance" draft={draft} change={change}>
        {(row) => (
          <>
            <TextField name={`${row}.substance`} label="Substance" list="substances" />
            <div className={styles.pair}>
              <TextField name={`${row}.amount`} label="How much" number />
              <ChoiceField name={`${row}.basis`} label="Measured in" choices={BASES} otherwise="% w/w" />
            </div>
          </>
        )}
      </Rows>
      <AskedFields of={asked} />
    </Section>
  );
}

function LabelSection({ change, asked }: Pick<SectionsProps, 'change'> & { asked: Asked[] }) {
  const { draft } = useTyping();
  const holds = (name: string) => name.startsWith('label.rates[') || name === 'label.reiHours' || among(asked)(name);
  return (
    <Section title="What its label says" digest={digestOf(draft, 'label')} holds={holds}>
      <TextField name="label.reiHours" label="Hours people keep out (REI)" number />
      <p className={styles.legend}>Rates</p>
      <p className="soft small">A dose as the label has it: 2 tsp/gal, 8 fl oz/100 gal, 4 fl oz/1000 sq ft, 0.5 %.</p>
      <Rows list="label.rates" one="rate" draft={draft} change={change}>
        {(row) => (
          <>
            <TextField name={`${row}.use`} label="For which use" />
            <div className={styles.pair}>
              <TextField name={`${row}.min`} label="Lowest dose" />
              <TextField name={`${row}.max`} label="Highest dose" />
            </div>
          </>
        )}
      </Rows>
      <AskedFields of={asked} />
    </Section>
  );
}

const AskedFields = ({ of }: { of: readonly Asked[] }) => of.map((asked) => <AskedField key={asked} asked={asked} />);

const startsWith = (start: string) => (name: string) => name.startsWith(start);
const among = (asked: readonly Asked[], ...more: string[]) => {
  const names = [...asked.flatMap((one) => ASKED_FIELDS[one]), ...more];
  return (name: string) => names.includes(name);
};

/** How many of these fields hold something, in words. */
function toldOf(draft: Readonly<Draft>, of: readonly Asked[]): string {
  const told = of.flatMap((one) => ASKED_FIELDS[one]).filter((name) => (draft[name] ?? '').trim() !== '');
  return told.length === 0 ? '' : `${told.length} entered`;
}
