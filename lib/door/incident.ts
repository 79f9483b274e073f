import { randomBytes } from 'node:crypto';

/** The request header in which the front of the server names each request. Never taken from outside. */
export const REQUEST_ID_HEADER = 'x-bench-request';

/**
 * Write down what went wrong, in full, where only the owner of the machine reads it, and give the short
 * reference that the answer may show. Nothing else about a fault of ours ever leaves the server.
 */
export function logIncident(where: string, error: unknown): string {
  const reference = randomBytes(4).toString('hex');
  if (process.env.LOG === 'json')
    console.error(JSON.stringify({ what: 'fault', reference, where, error: saidBy(error) }));
  else console.error(`[${reference}] ${where}:`, error);
  return reference;
}

/** A fault on one line, with its stack. */
const saidBy = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message) : String(error));

/** The one sentence for a fault of ours. */
export function incidentSentence(reference: string): string {
  return `Something went wrong on our side. Try once more; if it happens again, look for ${reference} in the server's log.`;
}

/** What an error says that is about the database's file and meant for people; null for a fault of ours. */
export const troubleSaid = (error: unknown): string | null =>
  error instanceof Error && error.name === 'FileTrouble' ? error.message : null;
