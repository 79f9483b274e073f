/**
 * How well a source is known. `read`: read in a copy of it. `memory`: recalled, and not looked up again. `practice`: the
 * trade does it so and nobody publishes a figure, or it is this program's own rule.
 */
type Basis = 'read' | 'memory' | 'practice';

export type Source = { basis: Exclude<Basis, 'practice'>; name: string } | { basis: 'practice' };

/** One rule in plain words, with where it comes from and the tests in `test/outside` that hold it. */
export type RuleFrom = { title: string; says: string; from: Source[]; heldBy: string[] };

export const PRACTICE: Source = { basis: 'practice' };
export const read = (name: string): Source => ({ basis: 'read', name });
export const memory = (name: string): Source => ({ basis: 'memory', name });
