import type { Fault } from '../outcome';
import type { ShopFile, WrittenShopFile } from '../shop-file/contract';
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

const SPRAYER = ['name', 'capacity', 'lossPerFill', 'measuringStep'] as const;
const MEASURE = ['name', 'holds', 'step'] as const;

export type SprayerTyped = Record<(typeof SPRAYER)[number], string>;
export type MeasureTyped = Record<(typeof MEASURE)[number], string>;

/** The tools of a shop as they are typed. The first sprayer is the one that is meant where none is named. */
export type ToolsDraft = {
  sprayers: SprayerTyped[];
  measures: MeasureTyped[];
  dropMl: string;
  conductivityLimit: string;
};

type Settings = ShopFile['shop'];

export const BLANK_SPRAYER: SprayerTyped = rowFrom(SPRAYER, () => '');
export const BLANK_MEASURE: MeasureTyped = rowFrom(MEASURE, () => '');

/** The tools as their form shows them. A shop that only says what a fill holds has one sprayer without a name. */
export const draftOfTools = (settings: Settings): ToolsDraft => ({
  sprayers: settings.sprayers.length > 0 ? settings.sprayers.map((sprayer) => ({ ...sprayer })) : [unnamed(settings)],
  measures: settings.measures.map(({ name, holds, step }) => ({ name, holds, step })),
  dropMl: typedNumber(settings.dropMl),
  conductivityLimit: typedNumber(settings.conductivityLimit),
});

const unnamed = ({ fillCapacity, lossPerFill, measuringStep }: Settings): SprayerTyped => ({
  name: 'Sprayer',
  capacity: fillCapacity,
  lossPerFill,
  measuringStep,
});

export const fieldsOfTools = ({ sprayers, measures, ...fields }: ToolsDraft): Fields => ({
  ...fields,
  ...fieldsOfRows('sprayers', sprayers),
  ...fieldsOfRows('measures', measures),
});

export const toolsInFields = (fields: Fields): ToolsDraft => ({
  sprayers: rowsTyped(fields, 'sprayers', SPRAYER),
  measures: rowsTyped(fields, 'measures', MEASURE),
  dropMl: fields.dropMl ?? '',
  conductivityLimit: fields.conductivityLimit ?? '',
});

export const ToolsForm = sentForm(
  toolsInFields,
  /^(dropMl|conductivityLimit|sprayers\[\d{1,3}\]\.(name|capacity|lossPerFill|measuringStep)|measures\[\d{1,3}\]\.(name|holds|step))$/,
);

/** The tools that were typed, as a shop file writes them. Rows in which nothing stands are left out. */
export function toolsOfDraft(draft: ToolsDraft): { shop: Partial<WrittenShopFile['shop']>; faults: Fault[] } {
  const faults = new FieldFaults();
  const sprayers = usedRows(draft.sprayers).map(({ row }) => ({
    ...{ name: row.name.trim(), capacity: row.capacity.trim() },
    ...{ lossPerFill: orNull(row.lossPerFill), measuringStep: orNull(row.measuringStep) },
  }));
  if (sprayers.length === 0) faults.add('sprayers[0].name', 'Name at least one sprayer, and what a fill of it holds.');
  const measures = usedRows(draft.measures).map(({ row: { name, holds, step } }) => {
    return { name: name.trim(), holds: holds.trim(), step: step.trim() };
  });
  const dropMl = faults.take('dropMl', readNumber(draft.dropMl, 'Write mL, such as 0.05.'));
  const conductivityLimit = faults.take(
    'conductivityLimit',
    readNumber(draft.conductivityLimit, 'Write mS/cm, such as 2.'),
  );
  return { shop: { sprayers, measures, dropMl, conductivityLimit }, faults: faults.faults };
}

/** The field of the form that a fault of the shop's tools is about. */
export function fieldOfToolsPath(draft: ToolsDraft, path: string): string {
  const field = path.replace(/^shop\./, '');
  const [, list, place, column] = /^(sprayers|measures)\[(\d+)\]\.(\w+)$/.exec(field) ?? [];
  if (list !== 'sprayers' && list !== 'measures') return field;
  return `${list}[${usedRows<Record<string, string>>(draft[list])[Number(place)]?.number ?? 0}].${column}`;
}
