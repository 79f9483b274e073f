import { readDose } from '../measure/dose';
import { read } from '../outcome';
import { NO, toldRows } from './product-fields';
import type { Fields } from './rows';

/** Something that nobody entered yet: its field, what that prevents and what to do, and whether people are kept out by it. */
export type Unknown = { field: string; says: string; grave: boolean };

/**
 * What of a product is not known, with what each prevents. Unknown may stay unknown; it is never taken for nought.
 *
 * Takes    the fields of a product's form, half typed or as it stands
 * Gives    what keeps people out first
 */
export function unknownsOf(fields: Fields): Unknown[] {
  const known = (name: string) => (fields[name] ?? '').trim() !== '';
  const contents = toldRows(fields, 'contents');
  const found: Unknown[] = [];
  const say = (field: string, says: string, grave = false) => found.push({ field, says, grave });
  if (!known('label.reiHours'))
    say('label.reiHours', 'People keep out until an interval is entered; write 0 if the label says 0.', true);
  if (fields.form === 'powder' && !known('gramsPerTeaspoon')) {
    say('gramsPerTeaspoon', 'Cost per litre unknown where it is dosed by the spoon: weigh one level teaspoon.');
  }
  if (fields.form === 'liquid' && !known('densityGPerMl') && needsDensity(fields)) {
    say('densityGPerMl', 'Its strength in the spray, or a dose by weight, is unknown: enter its density.');
  }
  if (contents.length === 0) say('contents[0].substance', inContents(fields.kind));
  if (toldRows(fields, 'label.rates').length === 0) {
    say('label.rates[0].use', 'No dose is judged against the label: enter its rates.');
  }
  const [unopened, opened] = [known('shelfLife.unopenedDays'), known('shelfLife.openedDays')];
  if (!unopened && !opened) {
    say('shelfLife.unopenedDays', 'Nobody can tell when it dies, unless a day is printed on it: enter a shelf life.');
  } else if (!opened) say('shelfLife.openedDays', 'An opened bottle counts as keeping as long as a shut one.');
  return found;
}

const inContents = (kind: string | undefined): string =>
  kind === 'pH adjuster'
    ? 'How much of it a target pH takes is unknown: enter which acid is in it, and how strong.'
    : 'Its strength in the spray is unknown, and nothing can be compared with it: enter what is in it.';

/** A share by weight, or a dose by weight, of a liquid. */
function needsDensity(fields: Fields): boolean {
  const byWeight = toldRows(fields, 'contents').some((row) =>
    ['% w/w', 'g/kg'].includes(fields[`contents[${row}].basis`] ?? ''),
  );
  const doses = toldRows(fields, 'label.rates').flatMap((row) => [
    fields[`label.rates[${row}].min`] ?? '',
    fields[`label.rates[${row}].max`] ?? '',
  ]);
  return byWeight || doses.some(isByWeight);
}

function isByWeight(text: string): boolean {
  const dose = text.trim() === '' ? read(null) : readDose(text, 'liquid');
  if (!dose.ok || !dose.value) return false;
  return dose.value.kind === 'mass' || (dose.value.kind === 'perArea' && dose.value.measure === 'mass');
}

/** What a part of the form holds so far, in a few words, for when it is shut. */
export function digestOf(fields: Fields, part: 'contents' | 'weight' | 'label' | 'keeping' | 'more' | 'rest'): string {
  const typed = (name: string) => (fields[name] ?? '').trim();
  const told = (name: string, say: (value: string) => string) => (typed(name) ? [say(typed(name))] : []);
  switch (part) {
    case 'contents':
      return toldRows(fields, 'contents')
        .map((row) => ['substance', 'amount', 'basis'].map((one) => typed(`contents[${row}].${one}`)).join(' '))
        .join(' · ');
    case 'weight':
      return [
        ...told('densityGPerMl', (g) => `${g} g/mL`),
        ...told('gramsPerTeaspoon', (g) => `${g} g in a teaspoon`),
      ].join(' · ');
    case 'label': {
      const rates = toldRows(fields, 'label.rates').length;
      const said = rates > 0 ? [`${rates} ${rates === 1 ? 'rate' : 'rates'}`] : [];
      return [...said, ...told('label.reiHours', (hours) => `people keep out for ${hours} h`)].join(' · ');
    }
    case 'keeping':
      return [
        ...told('shelfLife.unopenedDays', (days) => `${days} days unopened`),
        ...told('shelfLife.openedDays', (days) => `${days} opened`),
      ].join(' · ');
    case 'more':
      return '';
    case 'rest':
      return [
        ...told('gtins', (lines) => `bar code ${lines.split(/\s*[\r\n]+\s*/).join(', ')}`),
        ...(typed('archived') && typed('archived') !== NO ? ['put away'] : []),
      ].join(' · ');
  }
}
