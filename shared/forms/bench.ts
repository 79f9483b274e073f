import type { Fault } from '../outcome';
import type { ShopFile, Written } from '../shop-file/contract';
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

const COLUMNS = ['name', 'pot', 'count', 'mlPerPlant'] as const;

/** What stands on a bench, as it is typed. */
export type PlantsTyped = Record<(typeof COLUMNS)[number], string>;

/** A bench as it is typed. `customers` and `enclosed` are "yes" or empty, as a box that can be ticked is sent. */
export type BenchDraft = {
  name: string;
  customers: string;
  enclosed: string;
  coverage: string;
  area: string;
  /** Where it stands, and when something on it is next harvested or sold. */
  place: string;
  harvestOn: string;
  plants: PlantsTyped[];
};

type FileBench = ShopFile['benches'][number];

export const BLANK_PLANTS: PlantsTyped = rowFrom(COLUMNS, () => '');

const ticked = (is: boolean): string => (is ? 'yes' : '');

/** A bench as its form shows it. Null: a new one, which customers can reach until somebody says otherwise. */
export const draftOfBench = (bench: FileBench | null): BenchDraft => ({
  name: bench?.name ?? '',
  customers: ticked(bench?.customers ?? true),
  enclosed: ticked(bench?.enclosed ?? true),
  coverage: typedNumber(bench?.coverage ?? 1),
  area: bench?.area ?? '',
  place: bench?.place ?? '',
  harvestOn: bench?.harvestOn ?? '',
  plants: (bench?.plants ?? []).map(({ name, pot, count, mlPerPlant }) => {
    return { name, pot: pot ?? '', count: typedNumber(count), mlPerPlant: typedNumber(mlPerPlant) };
  }),
});

/** What a browser sends of a bench: a box that is not ticked is not sent at all. */
export const fieldsOfBench = ({ plants, customers, enclosed, ...fields }: BenchDraft): Fields => ({
  ...fields,
  ...(customers && { customers }),
  ...(enclosed && { enclosed }),
  ...fieldsOfRows('plants', plants),
});

export const benchInFields = (fields: Fields): BenchDraft => ({
  name: fields.name ?? '',
  customers: fields.customers ?? '',
  enclosed: fields.enclosed ?? '',
  coverage: fields.coverage ?? '',
  area: fields.area ?? '',
  place: fields.place ?? '',
  harvestOn: fields.harvestOn ?? '',
  plants: rowsTyped(fields, 'plants', COLUMNS),
});

export const BenchForm = sentForm(
  benchInFields,
  /^(name|customers|enclosed|coverage|area|place|harvestOn|plants\[\d{1,3}\]\.(name|pot|count|mlPerPlant))$/,
);

/**
 * The bench that was typed, as a shop file writes it. Rows of plants in which nothing stands are left out.
 *
 * Gives    the faults of what is no number, by field; the rest is judged with the whole shop
 */
export function benchOfDraft(id: string, draft: BenchDraft): { bench: Written<'benches'>; faults: Fault[] } {
  const faults = new FieldFaults();
  if (draft.name.trim() === '') faults.add('name', 'Write what the bench is called.');
  const plants = usedRows(draft.plants).map(({ row, number }) => {
    const at = (column: string) => `plants[${number}].${column}`;
    if (row.name.trim() === '') faults.add(at('name'), 'Write which plants these are.');
    const count = faults.take(at('count'), readNumber(row.count, 'Write how many, such as 120.'));
    if (row.count.trim() === '') faults.add(at('count'), 'Write how many plants, such as 120.');
    const mlPerPlant = faults.take(at('mlPerPlant'), readNumber(row.mlPerPlant, 'Write mL, such as 18.'));
    return { name: row.name.trim(), pot: orNull(row.pot), count: count ?? 0, mlPerPlant };
  });
  const coverage = faults.take('coverage', readNumber(draft.coverage, 'Write a factor, such as 1.'));
  const [customers, enclosed] = [draft.customers !== '', draft.enclosed !== ''];
  const where = { area: orNull(draft.area), place: orNull(draft.place), harvestOn: orNull(draft.harvestOn) };
  const bench = { id, name: draft.name.trim(), customers, enclosed, coverage, ...where, plants };
  return { bench, faults: faults.faults };
}

/** The field of the form that a fault of the bench's part of a shop file is about. */
export function fieldOfBenchPath(draft: BenchDraft, path: string): string {
  const [, place, field = path] = /^benches\[0\]\.(?:plants\[(\d+)\]\.)?(\w+)$/.exec(path) ?? [];
  return place === undefined ? field : `plants[${usedRows(draft.plants)[Number(place)]?.number ?? 0}].${field}`;
}
