import { z } from 'zod';
import { commandId, fingerprint, shopId } from './command-fields';
import { type Fields, rowOf, rowsIn } from './rows';

/** How many spoons or drops stand behind each reading. */
const pieces = z
  .string()
  .trim()
  .regex(/^[1-9]\d{0,3}$/, { error: 'Write how many there are in each reading: a whole number, 1 or more.' })
  .transform(Number);

const way = z.enum(['each', 'total'], { error: 'Choose what the scale shows.' });

const readings = (sent: Fields): string[] =>
  rowsIn(Object.keys(sent), 'readings').map((row) => sent[readingName(row)] ?? '');
export const readingName = (row: number): string => `readings[${row}]`;

const text = z.string().max(100, { error: 'Write the number only, such as "4.8".' });

/** A form whose readings are fields `readings[0]`, `readings[1]` …, gathered into one list. */
const Sent = z.record(z.string(), text).transform((sent): Record<string, unknown> => {
  const own = Object.entries(sent).filter(([name]) => rowOf(name, 'readings') === null);
  return { ...Object.fromEntries(own), readings: readings(sent) };
});

const readingList = z.array(z.string());

/** What was read while weighing spoons of a powder, to be kept in its product. */
export const WeighSpoon = Sent.pipe(
  z.strictObject({
    commandId: commandId(),
    shop: shopId(),
    id: z.string().max(64),
    standing: fingerprint(),
    pieces,
    way,
    readings: readingList,
  }),
);

/** What was read while counting drops, to be kept in the shop. */
export const MeasureDrop = Sent.pipe(
  z.strictObject({
    commandId: commandId(),
    shop: shopId(),
    id: z.literal(''),
    standing: z.literal(''),
    pieces,
    way,
    readings: readingList,
  }),
);
