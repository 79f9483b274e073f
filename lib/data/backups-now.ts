import 'server-only';
import { type BackedUp, backupInChild } from './backup-in-child';

/** The backup that is under way in this process, and how the last one went. */
type State = { running: Promise<BackedUp> | null; last: { at: number; result: BackedUp } | null };

const house: { backupsHere?: Map<string, State> } & typeof globalThis = globalThis;
house.backupsHere ??= new Map();
const all = house.backupsHere;

function stateOf(database: string): State {
  const state = all.get(database) ?? { running: null, last: null };
  all.set(database, state);
  return state;
}

/** Make a backup in the shop's own folder. Whoever asks while one is under way gets that one. */
export function backUp(database: string, at: number): Promise<BackedUp> {
  const state = stateOf(database);
  state.running ??= backupInChild(database, at).then((result) => {
    state.last = { at, result };
    state.running = null;
    return result;
  });
  return state.running;
}

/** Why the last backup of this process could not be made; null when it could, or when none was tried. */
export function lastFailure(database: string): string | null {
  const last = stateOf(database).last?.result;
  return last && !last.ok ? last.message : null;
}

/** When this process last tried; null when it has not yet. */
export const lastTry = (database: string): number | null => stateOf(database).last?.at ?? null;
