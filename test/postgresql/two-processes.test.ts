import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { wholeCheckOfPostgresql } from '@/lib/data/postgresql/whole-check';
import { SMALL, smallShop } from '../lib/commands/small-shop';
import { commandId } from '../promises/served';
import { askOnce } from '../run/postgresql-databases';
import { runs } from '../runs';
import { type Answered, type Asked, CLOCK } from './mixed-commands';

const [COMMANDS, CLIENTS, KILLS] = [runs(30, 5_000), runs(6, 20), runs(1, 10)];

/** A process of the program; whoever asks one that ends meanwhile hears nothing. */
class Process {
  private readonly waiting = new Map<string, (answer: Answered['outcome'] | null) => void>();

  private constructor(private readonly child: ChildProcess) {
    child.on('message', (said: Partial<Answered>) => {
      if (said.commandId !== undefined) this.waiting.get(said.commandId)?.(said.outcome ?? null);
    });
    child.once('exit', () => {
      for (const answer of this.waiting.values()) answer(null);
    });
  }

  static async start(): Promise<Process> {
    const child = fork(join(import.meta.dirname, 'one-process.ts'), {
      execArgv: ['--import', 'tsx', '--conditions=react-server'],
    });
    const started = new Process(child);
    await once(child, 'message');
    return started;
  }

  ask(asked: Asked): Promise<Answered['outcome'] | null> {
    if (this.child.exitCode !== null || this.child.signalCode !== null) return Promise.resolve(null);
    return new Promise((answer) => {
      this.waiting.set(asked.commandId, answer);
      this.child.send(asked, (error) => error && answer(null));
    });
  }

  async kill(): Promise<void> {
    this.child.kill('SIGKILL');
    if (this.child.signalCode === null) await once(this.child, 'exit');
  }
}

const KINDS: Asked['kind'][] = ['draw', 'draw', 'draw', 'change', 'spray'];

test(`two processes, ${COMMANDS} mixed commands of ${CLIENTS} clients, ${KILLS} kills: 0 lost, 0 double, 0 overdrawn`, {
  timeout: 3_600_000,
}, async () => {
  const shops = [await smallShop()];
  const other = await importShopFile({ commandId: commandId(), file: SMALL, into: { isDemo: false } }, CLOCK);
  if (other.ok) shops.push(other.value.shopId);
  const pair = [await Process.start(), await Process.start()];
  const answered: { id: string; kind: Asked['kind']; isDone: boolean; why: string | undefined }[] = [];
  let begun = 0;
  const client = async () => {
    while (begun < COMMANDS) {
      const number = begun++;
      const kind = KINDS[number % KINDS.length] ?? 'draw';
      const asked: Asked = { kind, commandId: commandId(), shopId: shops[number % 7 < 4 ? 0 : 1] ?? '' };
      for (let attempt = number; ; attempt += 1) {
        const outcome = await pair[attempt % 2]?.ask(asked);
        // Nobody knows whether it was done: it is sent again, to the other process.
        if (!outcome || outcome.thrown) continue;
        const again = number % 10 === 0 ? await pair[(attempt + 1) % 2]?.ask(asked) : null;
        if (again && !again.thrown && outcome.ok) expect(again).toEqual(outcome);
        answered.push({ id: asked.commandId, kind, isDone: outcome.ok, why: outcome.refusal?.code });
        break;
      }
    }
  };
  const killing = async () => {
    for (let kill = 1; kill <= KILLS; kill += 1) {
      while (answered.length < (kill * COMMANDS) / (KILLS + 1)) await new Promise((soon) => setTimeout(soon, 5));
      await pair[0]?.kill();
      pair[0] = await Process.start();
    }
  };
  await Promise.all([killing(), ...Array.from({ length: CLIENTS }, client)]);
  await Promise.all(pair.map((one) => one.kill()));

  const url = process.env.DATABASE_URL ?? '';
  const kept = await askOnce(url, `SELECT "id" FROM "Command" WHERE "name" <> 'importShopFile'`);
  const done = answered.filter(({ isDone }) => isDone);
  expect(kept.map(({ id }) => id).sort()).toEqual(done.map(({ id }) => id).sort());
  expect([...new Set(answered.filter(({ isDone }) => !isDone).map(({ kind, why }) => `${kind} ${why}`))]).toEqual(
    done.length < answered.length ? ['draw not-enough-stock'] : [],
  );
  const [books] = await askOnce(url, `SELECT count(*)::int AS draws FROM "Movement" WHERE "amount" = 7000`);
  const draws = done.filter(({ kind }) => kind === 'draw').length;
  expect(books?.draws).toBe(draws);
  // A bottle of 500 mL gives 71 draws of 7 mL.
  expect(draws).toBeLessThanOrEqual(142);
  expect(await wholeCheckOfPostgresql(url)).toMatchObject({
    ...{ file: [], rows: [], records: shops.map(() => [expect.any(String), []]), commands: done.length + 2 },
  });
});
