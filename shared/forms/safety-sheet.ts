import { z } from 'zod';
import { commandId, shopAsked, shopId } from './command-fields';

/** The most that a safety data sheet may be, and how much of its end is looked at. */
export const MOST_SHEET_BYTES = 10 * 1024 * 1024;
const TAIL = 2_048;

/**
 * Why some bytes are no PDF to keep; null when they are one.
 *
 * Takes    the whole file: its first bytes say that it is a PDF, its last ones that it is all there
 * Source   ISO 32000-1, 7.5.2 and 7.5.5
 */
export function sheetFault(bytes: Uint8Array): string | null {
  if (bytes.length === 0) return 'This file is empty. Choose the PDF of the safety data sheet.';
  if (bytes.length > MOST_SHEET_BYTES) return 'This file is larger than 10 MB. Choose a smaller PDF of the sheet.';
  const text = (part: Uint8Array) => new TextDecoder('latin1').decode(part);
  if (!/^%PDF-\d/.test(text(bytes.subarray(0, 16)))) {
    return 'This file is no PDF. Choose the PDF of the safety data sheet, or print the page to one.';
  }
  return text(bytes.subarray(-TAIL)).includes('%%EOF')
    ? null
    : 'This PDF is not whole: its end is missing. Load it down once more, then choose it again.';
}

/** The body of an upload: the bytes of a PDF. */
export const SheetBytes = z
  .custom<Uint8Array>((bytes) => bytes instanceof Uint8Array)
  .superRefine((bytes, context) => {
    const message = sheetFault(bytes);
    if (message !== null) context.addIssue({ code: 'custom', message });
  });

const product = z.string().min(1).max(64).describe('The id of the product.');

/** What `POST /api/v1/sheet` is asked. */
export const SheetUpload = z.strictObject({
  commandId: commandId().describe('Made once for each upload. Sending it again keeps nothing twice.'),
  shop: shopId().describe('The id of the shop.'),
  product,
  name: z
    .string()
    .min(1)
    .max(200)
    .regex(/^[^\p{Cc}/\\]+$/u, { error: 'Give the name of the file alone.' })
    .describe('The name of the file.'),
});

/** What `GET /api/v1/sheet` is asked. */
export const SheetQuestion = z.strictObject({
  shop: shopAsked(),
  product,
  number: z
    .string()
    .regex(/^[1-9]\d{0,5}$/, { error: 'Write the number of a version, from 1.' })
    .transform(Number)
    .optional()
    .describe('Which of its versions, from 1. Left out: the newest.'),
});
