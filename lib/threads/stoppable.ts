import 'server-only';

/** Pages and routes are bundles of their own, and share what the process has once. */
const house: { stoppable?: Map<string, AbortController> } & typeof globalThis = globalThis;
house.stoppable ??= new Map();
const running = house.stoppable;

/** Work that can be stopped by the id of its command, until it begins to be saved. */
export async function stoppable<T>(commandId: string, work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const controller = new AbortController();
  running.set(commandId, controller);
  try {
    return await work(controller.signal);
  } finally {
    if (running.get(commandId) === controller) running.delete(commandId);
  }
}

/** Stop the work of a command. Gives whether there is any; its own answer says whether it was stopped in time. */
export function stopWork(commandId: string): boolean {
  const controller = running.get(commandId);
  controller?.abort();
  return controller !== undefined;
}
