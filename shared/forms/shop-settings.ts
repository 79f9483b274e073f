import type { Fault } from '../outcome';
import type { ShopFile, WrittenShopFile } from '../shop-file/contract';
import { MONTHS } from '../time/civil';
import { WEEKDAYS, type Weekday } from '../time/day';
import { readCelsius, warmthTyped } from './celsius';
import { withMoneyWritten } from './money-fields';
import { openingsIn, openingsText } from './openings';
import type { Fields } from './rows';
import {
  FieldFaults,
  fieldsOfRows,
  orNull,
  readNumber,
  rowFrom,
  rowsTyped,
  sentForm,
  typedNumber,
  usedRows,
} from './sent-fields';

type Settings = ShopFile['shop'];
type WrittenSettings = Partial<WrittenShopFile['shop']>;

const PLAIN = [
  'name',
  'units',
  'timeZone',
  'alkalinity',
  'waterPh',
  'wagePerHour',
  'minutesPerPlant',
  'minutesPerBatch',
  'safetyDays',
  'sameModeInARow',
  'capitalPerYear',
  'oilSulfurDays',
  'oilHotC',
  'keepRecordsYears',
  'address',
  'contact',
  'medical',
  'poisonLine',
] as const;
type PlainField = (typeof PLAIN)[number];

const SPECIAL_DAY = ['on', 'name', 'hours'] as const;
const CONTACT = ['name', 'phone'] as const;

export type SpecialDayTyped = Record<(typeof SPECIAL_DAY)[number], string>;
export type ContactTyped = Record<(typeof CONTACT)[number], string>;

/** The shop's own settings as they are typed: the plain ones, hours as people write them, twelve months, and rows. */
export type SettingsDraft = Record<PlainField, string> & {
  hours: Record<Weekday, string>;
  /** The usual highest temperature of each month, with the letter of its unit, January first. */
  highs: string[];
  specialDays: SpecialDayTyped[];
  contacts: ContactTyped[];
};

export const BLANK_SPECIAL_DAY: SpecialDayTyped = rowFrom(SPECIAL_DAY, () => '');
export const BLANK_CONTACT: ContactTyped = rowFrom(CONTACT, () => '');

const months = <T>(of: (month: number) => T): T[] => MONTHS.map((_, at) => of(at + 1));

const perDay = (hoursOf: (weekday: Weekday) => string): Record<Weekday, string> => ({
  mon: hoursOf('mon'),
  tue: hoursOf('tue'),
  wed: hoursOf('wed'),
  thu: hoursOf('thu'),
  fri: hoursOf('fri'),
  sat: hoursOf('sat'),
  sun: hoursOf('sun'),
});

/** The settings as their form shows them. */
export const draftOfSettings = (settings: Settings): SettingsDraft => ({
  name: settings.name,
  units: settings.units,
  timeZone: settings.timeZone,
  alkalinity: typedNumber(settings.water?.alkalinityMgPerLCaCO3 ?? null),
  waterPh: typedNumber(settings.water?.pH ?? null),
  wagePerHour: settings.wagePerHour ?? '',
  minutesPerPlant: typedNumber(settings.minutesPerPlant),
  minutesPerBatch: typedNumber(settings.minutesPerBatch),
  safetyDays: typedNumber(settings.safetyDays),
  sameModeInARow: typedNumber(settings.sameModeInARow),
  capitalPerYear: typedNumber(settings.capitalPerYear),
  oilSulfurDays: typedNumber(settings.oilSulfurDays),
  oilHotC: warmthTyped(settings.oilHotC, settings.units),
  keepRecordsYears: typedNumber(settings.keepRecordsYears),
  address: settings.address ?? '',
  contact: settings.contact ?? '',
  medical: settings.emergency.medical ?? '',
  poisonLine: settings.emergency.poisonLine ?? '',
  hours: perDay((weekday) => openingsText(settings.openingHours[weekday])),
  highs: months((month) => warmthTyped(settings.monthlyHighsC?.[month - 1] ?? null, settings.units)),
  specialDays: settings.specialDays.map(({ on, name, hours }) => {
    return { on, name: name ?? '', hours: openingsText(hours) };
  }),
  contacts: settings.emergency.contacts.map(({ name, phone }) => ({ name, phone })),
});

export const fieldsOfSettings = ({ hours, highs, specialDays, contacts, ...fields }: SettingsDraft): Fields => ({
  ...fields,
  ...Object.fromEntries(WEEKDAYS.map((weekday) => [`open-${weekday}`, hours[weekday]])),
  ...Object.fromEntries(highs.map((high, at) => [`high-${at + 1}`, high])),
  ...fieldsOfRows('specialDays', specialDays),
  ...fieldsOfRows('contacts', contacts),
});

export const settingsInFields = (fields: Fields): SettingsDraft => ({
  ...rowFrom(PLAIN, (field) => fields[field] ?? ''),
  hours: perDay((weekday) => fields[`open-${weekday}`] ?? ''),
  highs: months((month) => fields[`high-${month}`] ?? ''),
  specialDays: rowsTyped(fields, 'specialDays', SPECIAL_DAY),
  contacts: rowsTyped(fields, 'contacts', CONTACT),
});

const Typed = sentForm(
  settingsInFields,
  new RegExp(
    `^(${PLAIN.join('|')}|open-(${WEEKDAYS.join('|')})|high-([1-9]|1[0-2])` +
      `|specialDays\\[\\d{1,3}\\]\\.(${SPECIAL_DAY.join('|')})|contacts\\[\\d{1,3}\\]\\.(${CONTACT.join('|')}))$`,
  ),
);

/** The form of the settings. */
export const SettingsForm = withMoneyWritten(Typed, /^wagePerHour$/);

const unitsOf = ({ units }: SettingsDraft): 'us' | 'metric' => (units === 'metric' ? 'metric' : 'us');

/** The settings that were typed, as a shop file writes them. Rows in which nothing stands are left out. */
export function settingsOfDraft(draft: SettingsDraft): { shop: WrittenSettings; faults: Fault[] } {
  const faults = new FieldFaults();
  const number = (field: PlainField, write: string) => faults.take(field, readNumber(draft[field], write));
  const shop = {
    name: draft.name.trim(),
    units: unitsOf(draft),
    timeZone: draft.timeZone.trim(),
    wagePerHour: orNull(draft.wagePerHour),
    minutesPerPlant: number('minutesPerPlant', 'Write minutes, such as 0.25.'),
    minutesPerBatch: number('minutesPerBatch', 'Write minutes, such as 20.'),
    safetyDays: number('safetyDays', 'Write whole days, such as 3.'),
    sameModeInARow: number('sameModeInARow', 'Write a whole number, such as 2.'),
    capitalPerYear: number('capitalPerYear', 'Write a fraction, such as 0.1 for 10 %.'),
    oilSulfurDays: number('oilSulfurDays', 'Write whole days, such as 30.'),
    oilHotC: faults.take('oilHotC', readCelsius(draft.oilHotC, unitsOf(draft))),
    keepRecordsYears: number('keepRecordsYears', 'Write whole years, such as 2.'),
    ...{ address: orNull(draft.address), contact: orNull(draft.contact) },
    openingHours: perDayRead(draft, faults),
    specialDays: specialDaysRead(draft, faults),
    water: waterRead(draft, faults),
    monthlyHighsC: highsRead(draft, faults),
    emergency: {
      contacts: usedRows(draft.contacts).map(({ row: { name, phone } }) => ({
        name: name.trim(),
        phone: phone.trim(),
      })),
      ...{ medical: orNull(draft.medical), poisonLine: orNull(draft.poisonLine) },
    },
  };
  return { shop, faults: faults.faults };
}

function waterRead(draft: SettingsDraft, faults: FieldFaults): WrittenSettings['water'] {
  const alkalinity = faults.take('alkalinity', readNumber(draft.alkalinity, 'Write mg/L as CaCO3, such as 120.'));
  const pH = faults.take('waterPh', readNumber(draft.waterPh, 'Write a pH, such as 7.6.'));
  if (draft.alkalinity.trim() !== '' && draft.waterPh.trim() === '') faults.add('waterPh', NEEDS_BOTH);
  if (draft.waterPh.trim() !== '' && draft.alkalinity.trim() === '') faults.add('alkalinity', NEEDS_BOTH);
  return alkalinity === null || pH === null ? null : { alkalinityMgPerLCaCO3: alkalinity, pH };
}

const NEEDS_BOTH = 'Water is known by its alkalinity and its pH. Write both, or leave both empty.';

function perDayRead({ hours }: SettingsDraft, faults: FieldFaults): WrittenSettings['openingHours'] {
  return Object.fromEntries(
    WEEKDAYS.map((weekday) => [weekday, openingsIn(hours[weekday], (fault) => faults.add(`open-${weekday}`, fault))]),
  );
}

function specialDaysRead(draft: SettingsDraft, faults: FieldFaults): WrittenSettings['specialDays'] {
  const days = new Set<string>();
  return usedRows(draft.specialDays).map(({ row, number }) => {
    const at = (field: string) => `specialDays[${number}].${field}`;
    if (days.has(row.on)) faults.add(at('on'), 'This day is in the list already. Write its hours once.');
    if (row.on === '') faults.add(at('on'), 'Which day is it? Choose it, or empty this line.');
    days.add(row.on);
    const hours = openingsIn(row.hours, (fault) => faults.add(at('hours'), fault));
    // What closes before it opens would be no opening at all, and a bench would count as out of reach.
    if (hours.some(([from, until]) => until <= from)) faults.add(at('hours'), 'It closes before it opens.');
    return { on: row.on, name: orNull(row.name), hours };
  });
}

/** All twelve, or none. */
function highsRead(draft: SettingsDraft, faults: FieldFaults): WrittenSettings['monthlyHighsC'] {
  const { highs } = draft;
  if (highs.every((high) => high.trim() === '')) return null;
  return highs.map((high, at) => {
    const field = `high-${at + 1}`;
    const degrees = readCelsius(high, unitsOf(draft));
    if (degrees.ok && degrees.value === null) faults.add(field, 'Write all twelve months, or leave all of them empty.');
    return faults.take(field, degrees) ?? 0;
  });
}

/** The field of the form that a fault of the shop's settings is about. */
export function fieldOfSettingsPath(draft: SettingsDraft, path: string): string {
  const field = path.replace(/^shop\.(emergency\.)?/, '');
  const day = /^openingHours\.(\w+)/.exec(field)?.[1];
  if (day) return `open-${day}`;
  if (field.startsWith('water')) return field.endsWith('pH') ? 'waterPh' : 'alkalinity';
  if (field.startsWith('monthlyHighsC')) return `high-${Number(/\d+/.exec(field)?.[0] ?? 0) + 1}`;
  const [, list, place, column] = /^(specialDays|contacts)\[(\d+)\]\.(\w+)/.exec(field) ?? [];
  if (list !== 'specialDays' && list !== 'contacts') return field;
  return `${list}[${usedRows<Record<string, string>>(draft[list])[Number(place)]?.number ?? 0}].${column}`;
}
