type Named = { id: string; name: string };

/** What something of a shop is called; its id where the shop has it no longer. */
export const nameIn = (things: readonly Named[], id: string): string =>
  things.find((thing) => thing.id === id)?.name ?? id;
