import { randomBytes } from 'node:crypto';

/** A short random id for a new row: twelve letters and digits, 72 bits, so that two never meet. */
export const newId = (): string => randomBytes(9).toString('base64url');

/** The id of a command for a form that is sent without scripts: 32 hexadecimal digits. */
export const newCommandId = (): string => randomBytes(16).toString('hex');
