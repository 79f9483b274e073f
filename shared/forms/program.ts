import type { Fault } from '../outcome';
import type { ShopFile, Written } from '../shop-file/contract';
import { type RepeatDraft, repeatOfText, textOfRepeat } from './repeat';
import type { Fields } from './rows';
import { FieldFaults, orNull, readNumber, rowsTyped, sentForm, typedNumber } from './sent-fields';

/** A program as it is typed. */
export type ProgramDraft = {
  /** Ids of recipes in their turn; an empty one is a row in which none was chosen. */
  recipes: string[];
  benches: string[];
  startsOn: string;
  endsOn: string;
  startTime: string;
  minutes: string;
  /** The name of a sprayer; empty: the first. */
  sprayer: string;
} & RepeatDraft;

type FileProgram = ShopFile['programs'][number];

/** A program as its form shows it. Null: a new one that starts today, once a week on that day. */
export const draftOfProgram = (program: FileProgram | null, today: string): ProgramDraft => ({
  recipes: program?.recipes ?? [],
  benches: program?.benches ?? [],
  startsOn: program?.startsOn ?? today,
  endsOn: program?.endsOn ?? '',
  startTime: program?.startTime ?? '',
  minutes: typedNumber(program?.minutes ?? null),
  sprayer: program?.sprayer ?? '',
  ...repeatOfText(program?.repeat ?? null, program?.startsOn ?? today),
  ...(program ? {} : { kind: 'weeks' }),
});

const rows = (list: string, column: string, values: readonly string[]): Fields =>
  Object.fromEntries(values.map((value, number) => [`${list}[${number}].${column}`, value]));

/** What a browser sends of a program. */
export const fieldsOfProgram = ({ recipes, benches, weekdays, ...fields }: ProgramDraft): Fields => ({
  ...fields,
  ...rows('recipes', 'recipe', recipes),
  ...rows('benches', 'bench', benches),
  ...rows('weekdays', 'day', weekdays),
});

export const programInFields = (fields: Fields): ProgramDraft => ({
  recipes: rowsTyped(fields, 'recipes', ['recipe']).map(({ recipe }) => recipe),
  benches: rowsTyped(fields, 'benches', ['bench']).map(({ bench }) => bench),
  startsOn: fields.startsOn ?? '',
  endsOn: fields.endsOn ?? '',
  startTime: fields.startTime ?? '',
  minutes: fields.minutes ?? '',
  sprayer: fields.sprayer ?? '',
  kind: fields.kind ?? '',
  weekdays: rowsTyped(fields, 'weekdays', ['day']).map(({ day }) => day),
  everyWeeks: fields.everyWeeks ?? '',
  everyDays: fields.everyDays ?? '',
  rule: fields.rule ?? '',
});

export const ProgramForm = sentForm(
  programInFields,
  /^(startsOn|endsOn|startTime|minutes|sprayer|kind|everyWeeks|everyDays|rule|recipes\[\d{1,3}\]\.recipe|benches\[\d{1,3}\]\.bench|weekdays\[\d{1,3}\]\.day)$/,
);

/**
 * The program that was typed, as a shop file writes it.
 *
 * Takes    the program as it stands, whose further fields stay as they are; null for a new one
 */
export function programOfDraft(
  id: string,
  draft: ProgramDraft,
  standing: FileProgram | null,
): { program: Written<'programs'>; faults: Fault[] } {
  const faults = new FieldFaults();
  const recipes = draft.recipes.filter((recipe) => recipe !== '');
  if (recipes.length === 0) faults.add('recipes[0].recipe', 'Choose at least one recipe.');
  if (draft.benches.length === 0) faults.add('benches', 'Choose at least one bench.');
  if (draft.startTime.trim() === '') faults.add('startTime', 'Write when spraying starts, such as 17:30.');
  if (draft.startsOn.trim() === '') faults.add('startsOn', 'Write the first day.');
  if (draft.minutes.trim() === '') faults.add('minutes', 'Write how long it takes, such as 45.');
  const minutes = faults.take('minutes', readNumber(draft.minutes, 'Write whole minutes, such as 45.'));
  const repeat = faults.take(fieldOfRepeat(draft), textOfRepeat(draft));
  const program = {
    ...standing,
    ...{ id, recipes, benches: draft.benches, startsOn: draft.startsOn.trim(), endsOn: orNull(draft.endsOn), repeat },
    startTime: draft.startTime.trim(),
    minutes: minutes ?? 0,
    sprayer: orNull(draft.sprayer),
  };
  return { program, faults: faults.faults };
}

/** The field that says how a program comes back, by the way that was chosen. */
const fieldOfRepeat = ({ kind }: RepeatDraft): string =>
  kind === 'weeks' ? 'everyWeeks' : kind === 'days' ? 'everyDays' : 'rule';

/** The field of the form that a fault of the program's part of a shop file is about. */
export function fieldOfProgramPath(draft: ProgramDraft, path: string): string {
  const [, field, place] = /^programs\[0\]\.(\w+)(?:\[(\d+)\])?$/.exec(path) ?? [];
  if (field === undefined) return path;
  if (field === 'repeat') return fieldOfRepeat(draft);
  if (field !== 'recipes' || place === undefined) return field;
  const chosen = draft.recipes.flatMap((recipe, number) => (recipe === '' ? [] : number));
  return `recipes[${chosen[Number(place)] ?? 0}].recipe`;
}
