import { fileURLToPath } from 'node:url';

/** The folder of the program. */
export const root = fileURLToPath(new URL('../../../', import.meta.url));
