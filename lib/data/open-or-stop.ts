import 'server-only';
import { database } from './database';

/** Open the database and check how it keeps what it is given; or say why it cannot be, and end the process. */
export async function openOrStop(): Promise<void> {
  try {
    await database();
  } catch (error) {
    console.error(`\n  The shop cannot open. ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
}
