/**
 * Runs once, before the first request: the database is opened, and how it keeps what it is given is checked. A shop
 * whose database is missing, damaged or would not keep its promises does not open at all. From then on its clock is
 * watched, because a wrong clock opens benches too soon, alerts are looked for, a backup is made each night, and the
 * shops are read before anybody asks for them.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { openOrStop } = await import('@/lib/data/open-or-stop');
    await openOrStop();
    const [{ clock }, { watchClock }, { watchAlerts }, { watchBackups }, { tellOwnerCode }, { readAhead }] =
      await Promise.all([
        import('@/lib/clock'),
        import('@/lib/commands/watch-clock'),
        import('@/lib/alerts/watch-alerts'),
        import('@/lib/commands/watch-backups'),
        import('@/lib/access/owner-code'),
        import('@/lib/data/read-ahead'),
      ]);
    await tellOwnerCode();
    await watchClock(clock);
    watchAlerts(clock);
    watchBackups(clock);
    void readAhead(clock.today);
  }
}
