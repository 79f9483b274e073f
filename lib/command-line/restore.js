/**
 * `npm run restore -- FILE`: put a backup in the place of the database. It shows first what is in it, asks, and keeps
 * what was there aside. `--yes` answers the question.
 */
import { inStoppedShop } from './start/in-stopped-shop.js';

await inStoppedShop(async () => (await import('./restore.ts')).restore);
