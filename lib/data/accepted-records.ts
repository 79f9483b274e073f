import { z } from 'zod';
import type { Ask } from './sealed-rows';

/** What the command says that accepts records as they stand; it stays among the commands for good. */
export const AcceptedRecords = z.object({
  reason: z.string(),
  records: z.array(z.object({ mark: z.string(), application: z.string(), message: z.string() })),
});
export type AcceptedRecords = z.infer<typeof AcceptedRecords>;

/** As a command keeps it: its answer is a list of one. */
export const KeptAnswer = z.tuple([AcceptedRecords]).transform(([answer]) => answer);

export const ACCEPT_RECORDS = 'acceptRecords';

/** The marks of all faults in the records of a shop that somebody accepted. What cannot be read accepts nothing. */
export async function acceptedMarks(ask: Ask, shopId: string): Promise<ReadonlySet<string>> {
  const rows = await ask(
    `SELECT CAST("answer" AS TEXT) AS answer FROM "Command" WHERE "shopId" = ? AND "name" = '${ACCEPT_RECORDS}'`,
    shopId,
  );
  return new Set(rows.flatMap(({ answer }) => answerIn(answer)?.records.map(({ mark }) => mark) ?? []));
}

function answerIn(text: unknown): AcceptedRecords | null {
  try {
    return KeptAnswer.parse(JSON.parse(String(text)));
  } catch {
    return null;
  }
}
