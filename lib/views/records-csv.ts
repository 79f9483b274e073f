import type { CellOut } from '@/shared/csv/write-rows';
import { fahrenheit } from '@/shared/forms/celsius';
import type { OpeningDocument, RecordDocument, RecordsDocument, VersionDocument } from './record-document';

type Line = { record: RecordDocument; version: VersionDocument; product: VersionDocument['products'][number] | null };

/** Every column of the log as a list, by its title. */
const COLUMNS: [title: string, cell: (line: Line) => CellOut][] = [
  ['record', ({ record }) => record.id],
  ['version', ({ version }) => version.version],
  ['state', stateOf],
  ['in force', (line) => (isInForce(line) ? 'yes' : 'no')],
  ['product', ({ product }) => product?.name ?? null],
  ['registration number', ({ product }) => product?.registration ?? null],
  ['active ingredients', ({ product }) => product?.actives ?? null],
  ['amount', ({ product }) => product?.amount ?? null],
  ['dose', ({ product }) => product?.dose ?? null],
  ['crop or site treated', ({ version }) => version.crop],
  ['location', ({ version }) => version.location],
  ['benches', ({ version }) => version.benches.map(({ name }) => name).join('; ')],
  ['started', ({ version }) => version.startedAt],
  ['ended', ({ version }) => version.endedAt],
  ['restricted-entry interval of the product, minutes', ({ product }) => product?.reiMinutes ?? null],
  ['restricted-entry interval of the mix, minutes', ({ version }) => version.reiMinutes],
  ['applicator', ({ version }) => version.applicator],
  ['recipe', ({ version }) => version.recipe.name],
  ['mixed', ({ version }) => version.mixedAt],
  ['spray mixed', ({ version }) => version.sprayed],
  ['left over', ({ version }) => version.leftover],
  ['what became of it', ({ version }) => version.leftoverWent],
  ['which plants', ({ version }) => version.plants],
  ['conditions', ({ version }) => version.conditions],
  ['temperature, °C', ({ version }) => version.temperatureC],
  ['temperature, °F', ({ version }) => (version.temperatureC === null ? null : fahrenheit(version.temperatureC))],
  ['pH', ({ version }) => version.pH],
  ['stops passed, and why', ({ version }) => version.passed.map(({ rule, reason }) => `${rule}: ${reason}`).join('; ')],
  ['bottles drawn from', drawnOf],
  ['must be kept until', ({ record }) => record.mustBeKeptUntil],
  ['entered by', ({ version }) => version.enteredBy],
  ['entered at', ({ version }) => version.enteredAt],
  ['why amended', ({ version }) => version.reason],
  ['confirmed by', ({ version }) => version.confirmed?.by ?? null],
  ['confirmed at', ({ version }) => version.confirmed?.at ?? null],
  ['why confirmed', ({ version }) => version.confirmed?.reason ?? null],
  ['line of the chain', ({ version }) => version.seal?.line ?? null],
  ['hash', ({ version }) => version.seal?.hash ?? null],
];

/** What a line of a bench that was let open earlier says, by the title of the column. */
const OF_OPENINGS: Record<string, (opening: OpeningDocument) => CellOut> = {
  state: () => 'opened earlier by hand',
  benches: ({ bench }) => bench.name,
  'entered by': ({ by }) => by,
  'entered at': ({ at }) => at,
  'why confirmed': ({ reason }) => reason,
  'would have been closed until': ({ closedUntil }) => closedUntil ?? 'not known',
  'opened at': ({ opensAt }) => opensAt,
};

/** Columns that only a bench that was let open earlier fills. */
const MORE = ['would have been closed until', 'opened at'];

/**
 * Records as a list: a line for each product of each version, so that every version is there; one where none is named.
 * After them a line for each bench that somebody let open earlier.
 */
export function recordRows({ records, openings }: Pick<RecordsDocument, 'records' | 'openings'>): CellOut[][] {
  const lines = records.flatMap((record) =>
    record.versions.flatMap((version): Line[] =>
      version.products.length === 0
        ? [{ record, version, product: null }]
        : version.products.map((product) => ({ record, version, product })),
    ),
  );
  const titles = [...COLUMNS.map(([title]) => title), ...MORE];
  return [
    titles,
    ...lines.map((line) => [...COLUMNS.map(([, cell]) => cell(line)), ...MORE.map(() => null)]),
    ...openings.map((opening) => titles.map((title) => OF_OPENINGS[title]?.(opening) ?? null)),
  ];
}

/**
 * True on one line of each record: the first of the version that counts. An amendment that is still to be confirmed does
 * not count yet; of a record that was withdrawn, no line does.
 */
function isInForce({ record, version, product }: Line): boolean {
  const counting = record.versions.findLast(({ unconfirmed }) => !unconfirmed) ?? record.versions.at(-1);
  return version === counting && !version.withdrawn && (product === null || product === version.products[0]);
}

/** Only the newest version counts, and not that one either when it was withdrawn. */
function stateOf({ record, version }: Line): string {
  return version === record.versions.at(-1) ? record.state : 'amended';
}

function drawnOf({ record, product }: Line): string {
  return record.drawnFrom
    .filter((draw) => draw.product === product?.id)
    .map(({ lot, number, pack, amount }) => `${amount} from lot ${lot} no. ${number} (${pack})`)
    .join('; ');
}
