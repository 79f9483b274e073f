import { z } from 'zod';
import { commandId, fingerprint, shopId } from './command-fields';
import { LIST_FIELDS, NUMBER_FIELDS, ROWS, type RowList, TEXT_FIELDS, YES_NO_FIELDS } from './product-fields';
import { type Fields, rowOf } from './rows';

/** Words after /shelf/ that are pages of their own, so that no product can have them as its id. */
export const SHELF_PAGES = [
  ...['new', 'suppliers', 'receive', 'bottle', 'labels', 'scan', 'measure-a-drop', 'counts', 'csv', 'search'],
] as const;

const About = z.object({
  commandId: commandId(),
  shop: shopId(),
  /** The product that is corrected; empty for a new one. */
  id: z.string().max(64),
  /** How the product stood when the form was opened; empty for a new one. */
  standing: z.union([fingerprint(), z.literal('')]),
  /** Whether a second product of the same name is meant. */
  keepBoth: z.string().max(10).default(''),
});

const TOO_OLD = 'This form is too old. Copy what you typed, reload the page and enter it again.';
const LONGEST = 20_000;

/** The form of a product: what it is about, and the product's own fields as they were typed. */
export const ProductForm = z
  .record(z.string(), z.string({ error: 'Write text here.' }).max(LONGEST, { error: 'Write less here.' }), {
    error: TOO_OLD,
  })
  .transform((sent, context): z.output<typeof About> & { fields: Fields } => {
    const strange = Object.keys(sent).filter((name) => !(name in About.shape) && !isProductField(name));
    const about = About.safeParse(sent);
    if (!about.success || strange.length > 0) {
      context.addIssue({ code: 'custom', message: TOO_OLD });
      return z.NEVER;
    }
    const fields = Object.entries(sent).filter(([name]) => !(name in About.shape));
    return { ...about.data, fields: Object.fromEntries(fields) };
  });
export type ProductForm = z.output<typeof ProductForm>;

const SINGLE: ReadonlySet<string> = new Set([...TEXT_FIELDS, ...NUMBER_FIELDS, ...LIST_FIELDS, ...YES_NO_FIELDS]);

const isProductField = (name: string): boolean =>
  SINGLE.has(name) ||
  (Object.keys(ROWS) as RowList[]).some((list) => {
    const row = rowOf(name, list);
    return row !== null && ROWS[list].parts.some((part) => name === `${list}[${row}]${part}`);
  });
