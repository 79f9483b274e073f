import { createHash, randomBytes } from 'node:crypto';

/** 256 bits: nobody finds one by trying. */
const TOKEN_BYTES = 32;

/** A new secret, as a cookie or a link carries it. */
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString('base64url');

/** What is kept of a secret: 64 hexadecimal digits, from which nobody gets it back. */
export const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** True for a text that may be a secret of ours; anything else is not looked for. */
export const isToken = (text: string): boolean => /^[\w-]{43}$/.test(text);
