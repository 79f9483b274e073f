/**
 * Runs once, before the first request: the database is opened, and how it keeps what it is given is checked. A shop
 * whose database is missing, damaged or would not keep its promises does not open at all.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { database } = await import('@/lib/data/database');
  try {
    await database();
  } catch (error) {
    console.error(`\n  The shop cannot open. ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
}
