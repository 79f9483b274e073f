import { z } from 'zod';
import { shopAsked } from '../forms/command-fields';

const LISTS = ['products', 'offers', 'lots'] as const;

const about = {
  shop: z.string().min(1).max(100).describe('The id of the shop to bring the list into.'),
  list: z.enum(LISTS).describe('Which list it is.'),
  text: z.string().describe('The CSV file, as text.'),
  columns: z
    .array(z.string().max(100).nullable())
    .max(1_000)
    .nullable()
    .default(null)
    .describe('For each column in order the field it stands for, or null to leave it out. Left out: by their names.'),
  decimals: z
    .enum(['point', 'comma'])
    .nullable()
    .default(null)
    .describe('Which mark divides whole and decimals. Left out: as the file proves it.'),
  dayOrder: z
    .enum(['day-first', 'month-first'])
    .nullable()
    .default(null)
    .describe('What comes first in days such as 03/04/2026. Left out: as the file proves it.'),
  createSuppliers: z
    .boolean()
    .default(false)
    .describe('Whether suppliers that offers name and the shop does not know are made.'),
};

/** What `POST /api/v1/csv/preview` takes. */
export const CsvPreviewBody = z.strictObject(about);

/** What `POST /api/v1/csv/import` takes: the same, with the id of this command and what the preview showed. */
export const CsvImportBody = z.strictObject({
  ...about,
  commandId: z
    .string()
    .regex(/^[0-9a-f-]{16,64}$/, {
      error: 'Write 16 to 64 characters of 0-9, a-f and -. Make a new one for each import.',
    })
    .describe('Made by the sender, once per import: sending it again gives the same answer and changes nothing.'),
  fingerprint: z.string().min(1).max(100).describe('The fingerprint that the preview gave.'),
});

const shop = shopAsked();

/** What `GET /api/v1/csv/products.csv` and its neighbours are asked. */
export const CsvQuestion = z.strictObject({ shop });

/** What `GET /api/v1/csv/template.csv` is asked. */
export const TemplateQuestion = z.strictObject({ list: z.enum(LISTS).describe('Which list it is for.') });

const note = z.strictObject({ line: z.number().int().nullable(), column: z.string().nullable(), message: z.string() });
const thing = z.strictObject({ line: z.number().int().nullable(), id: z.string(), name: z.string() });
const differing = z.strictObject({ field: z.string(), from: z.unknown(), to: z.unknown() });

/** What bringing a list in would do. As long as it has faults, nothing can be brought in. */
export const CsvPreviewAnswer = z.strictObject({
  shopName: z.string(),
  list: z.enum(LISTS),
  lines: z.number().int(),
  columns: z.array(z.strictObject({ header: z.string(), example: z.string(), field: z.string().nullable() })),
  choices: z.array(z.strictObject({ field: z.string(), title: z.string(), isNeeded: z.boolean() })),
  open: z.strictObject({
    decimals: z.string().nullable(),
    dayOrder: z.strictObject({ column: z.string(), example: z.string() }).nullable(),
    suppliers: z.array(z.string()),
  }),
  warnings: z.array(note),
  faults: z.array(note),
  added: z.array(thing),
  changed: z.array(thing.extend({ fields: z.array(differing) })),
  unchanged: z.number().int(),
  fingerprint: z.string(),
});
export type CsvPreviewAnswer = z.output<typeof CsvPreviewAnswer>;

/** What bringing a list in did. */
export const CsvImportAnswer = z.strictObject({
  added: z.number().int(),
  changed: z.number().int(),
  suppliers: z.number().int(),
});
export type CsvImportAnswer = z.output<typeof CsvImportAnswer>;
