import type { Fault } from '../outcome';
import type { ShopFile, WrittenShopFile } from '../shop-file/contract';
import { WEEKDAYS, type Weekday } from '../time/day';
import { FieldFaults, type Fields, orNull, readNumber, sentForm, typedNumber } from './sent-fields';

type Settings = ShopFile['shop'];
type WrittenSettings = Partial<WrittenShopFile['shop']>;

const PLAIN = [
  'name',
  'units',
  'timeZone',
  'alkalinity',
  'waterPh',
  'wagePerHour',
  'safetyDays',
  'sameModeInARow',
  'capitalPerYear',
] as const;

/** The shop's own settings as they are typed: the plain ones, and the hours of each day as people write them. */
export type SettingsDraft = Record<(typeof PLAIN)[number], string> & { hours: Record<Weekday, string> };

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
  safetyDays: typedNumber(settings.safetyDays),
  sameModeInARow: typedNumber(settings.sameModeInARow),
  capitalPerYear: typedNumber(settings.capitalPerYear),
  hours: perDay((weekday) => settings.openingHours[weekday].map(([from, until]) => `${from}-${until}`).join(', ')),
});

export const fieldsOfSettings = ({ hours, ...fields }: SettingsDraft): Fields => ({
  ...fields,
  ...Object.fromEntries(WEEKDAYS.map((weekday) => [`open-${weekday}`, hours[weekday]])),
});

export const settingsInFields = (fields: Fields): SettingsDraft => ({
  name: fields.name ?? '',
  units: fields.units ?? '',
  timeZone: fields.timeZone ?? '',
  alkalinity: fields.alkalinity ?? '',
  waterPh: fields.waterPh ?? '',
  wagePerHour: fields.wagePerHour ?? '',
  safetyDays: fields.safetyDays ?? '',
  sameModeInARow: fields.sameModeInARow ?? '',
  capitalPerYear: fields.capitalPerYear ?? '',
  hours: perDay((weekday) => fields[`open-${weekday}`] ?? ''),
});

export const SettingsForm = sentForm(
  settingsInFields,
  new RegExp(`^(${PLAIN.join('|')}|open-(${WEEKDAYS.join('|')}))$`),
);

/** The settings that were typed, as a shop file writes them. */
export function settingsOfDraft(draft: SettingsDraft): { shop: WrittenSettings; faults: Fault[] } {
  const faults = new FieldFaults();
  const number = (field: (typeof PLAIN)[number], write: string) => faults.take(field, readNumber(draft[field], write));
  const alkalinity = number('alkalinity', 'Write mg/L as CaCO3, such as 120.');
  const waterPh = number('waterPh', 'Write a pH, such as 7.6.');
  if (draft.alkalinity.trim() !== '' && draft.waterPh.trim() === '') faults.add('waterPh', NEEDS_BOTH);
  if (draft.waterPh.trim() !== '' && draft.alkalinity.trim() === '') faults.add('alkalinity', NEEDS_BOTH);
  const water = alkalinity === null || waterPh === null ? null : { alkalinityMgPerLCaCO3: alkalinity, pH: waterPh };
  const shop = {
    name: draft.name.trim(),
    units: draft.units === 'metric' ? ('metric' as const) : ('us' as const),
    timeZone: draft.timeZone.trim(),
    wagePerHour: orNull(draft.wagePerHour),
    safetyDays: number('safetyDays', 'Write whole days, such as 3.'),
    sameModeInARow: number('sameModeInARow', 'Write a whole number, such as 2.'),
    capitalPerYear: number('capitalPerYear', 'Write a fraction, such as 0.1 for 10 %.'),
    openingHours: perDayRead(draft, faults),
    water,
  };
  return { shop, faults: faults.faults };
}

const NEEDS_BOTH = 'Water is known by its alkalinity and its pH. Write both, or leave both empty.';

function perDayRead({ hours }: SettingsDraft, faults: FieldFaults): WrittenSettings['openingHours'] {
  return Object.fromEntries(
    WEEKDAYS.map((weekday) => [weekday, openingsIn(hours[weekday], (fault) => faults.add(`open-${weekday}`, fault))]),
  );
}

/** "9:00-12:00, 13:00–18:00": two times and a dash between them, a comma between two openings. Empty: closed. */
function openingsIn(text: string, complain: (fault: string) => void): [string, string][] {
  if (text.trim() === '') return [];
  return text.split(/[,;]|\band\b/).flatMap((opening): [string, string][] => {
    const parts = /^\s*(\d{1,2}:\d\d)\s*(?:-|–|to)\s*(\d{1,2}:\d\d)\s*$/.exec(opening);
    if (parts) return [[twoDigits(parts[1] ?? ''), twoDigits(parts[2] ?? '')]];
    complain(
      `${JSON.stringify(opening.trim())} is no opening. Write it like "09:00-18:00"; leave it empty for closed.`,
    );
    return [];
  });
}

const twoDigits = (time: string): string => time.padStart(5, '0');

/** The field of the form that a fault of the shop's settings is about. */
export function fieldOfSettingsPath(path: string): string {
  const field = path.replace(/^shop\./, '');
  const day = /^openingHours\.(\w+)/.exec(field)?.[1];
  if (day) return `open-${day}`;
  if (field.startsWith('water')) return field.endsWith('pH') ? 'waterPh' : 'alkalinity';
  return field;
}
