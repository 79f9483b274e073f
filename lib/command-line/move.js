/**
 * `npm run move -- --to postgresql://…`: copy everything in the data folder into an empty PostgreSQL database, and compare
 * all of it. `--from postgresql://…` brings it back into the data folder. The shop must be stopped.
 */
import { inStoppedShop } from './start/in-stopped-shop.js';

await inStoppedShop(async () => (await import('./move.ts')).move);
