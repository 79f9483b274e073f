import { createHash } from 'node:crypto';

/** The SHA-256 of a text in UTF-8, or of bytes, in lower-case hexadecimal. */
export const sha256 = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');
