import { atOnce, type Steps } from '@/shared/steps';
import { NO_HASH, type Seal, type Sealable, sealedName, sealText } from './seal-text';

/**
 * What is wrong with a record or with the line that seals it.
 *
 *   changed   it is no longer what was sealed, or its seal is not
 *   missing   it was sealed, and is not there any more
 *   unsealed  it is there, and was never sealed: it was not written by this program
 *   broken    the line does not follow on the one before it: a line between them is gone, or was changed
 */
export type ChainFault = {
  wrong: 'changed' | 'missing' | 'unsealed' | 'broken';
  application: string;
  version: string;
  kind: Sealable['kind'];
  /** The line of the chain; null for what has none. */
  seal: string | null;
  /** The same for the same fault in the same text and line: whoever accepts it accepts no other change. */
  mark: string;
};

/**
 * Everything in the records of a shop that is not as it was sealed, the first bad record first.
 *
 * Takes    the lines of the chain in the order of their numbers, everything that ought to be sealed, and SHA-256; and the
 *          line before the first of them, where they are only the newest ones
 * Gives    none when every record is as it was written. That the newest records were taken away together with their
 *          lines cannot be seen from within: compare the newest hash with one that was printed or exported before
 */
export const chainFaults = (...given: Parameters<typeof faultsInSteps>): ChainFault[] =>
  atOnce(faultsInSteps(...given));

/** So many lines are checked between two pauses. */
const FEW_LINES = 100;

/** The same with pauses. */
export function* faultsInSteps(
  seals: readonly Seal[],
  things: readonly Sealable[],
  sha256: (text: string) => string,
  lineBefore: Pick<Seal, 'number' | 'hash'> = { number: '0', hash: NO_HASH },
): Steps<ChainFault[]> {
  const there = new Map(things.map((thing) => [sealedName(thing), thing]));
  const sealed = new Set<string>();
  const faults: ChainFault[] = [];
  let before = { number: Number(lineBefore.number), hash: lineBefore.hash };
  for (const [place, seal] of seals.entries()) {
    if (place % FEW_LINES === 0) yield;
    const { application, version, kind, number } = seal;
    const thing = there.get(sealedName(seal));
    const follows = before.hash;
    const say = (wrong: ChainFault['wrong']) => {
      const stands = JSON.stringify([wrong, seal, follows, thing ? sealText(seal, thing) : null]);
      faults.push({ wrong, application, version, kind, seal: number, mark: sha256(stands) });
    };
    sealed.add(sealedName(seal));
    if (!thing) say('missing');
    else if (sha256(sealText(seal, thing)) !== seal.hash) say('changed');
    if (number !== `${before.number + 1}` || seal.previousHash !== before.hash) say('broken');
    before = { number: Number(number), hash: seal.hash };
  }
  for (const thing of things) {
    const { application, version, kind } = thing;
    if (sealed.has(sealedName(thing))) continue;
    const mark = sha256(`unsealed ${sealedName(thing)} ${sealText(NO_LINE, thing)}`);
    faults.push({ wrong: 'unsealed', application, version, kind, seal: null, mark });
  }
  return faults;
}

/** What a person was shown: the same for the same faults. */
export const seenFaults = (faults: readonly ChainFault[], sha256: (text: string) => string): string =>
  sha256(JSON.stringify(faults.map(({ mark }) => mark)));

/** For the text of what no line seals. */
const NO_LINE = { number: '0', previousHash: NO_HASH, sealedAt: '0' };

/** What is wrong, in one sentence that names the record. */
export function faultSentence({ wrong, application, version, kind, seal }: ChainFault): string {
  const which = `${kind === 'version' ? 'Version' : 'The confirmation of version'} ${version} of record "${application}"`;
  switch (wrong) {
    case 'changed':
      return `${which} is not as it was sealed in line ${seal}: somebody changed it, or its seal, outside of this program.`;
    case 'missing':
      return `${which} was sealed in line ${seal} and is gone.`;
    case 'unsealed':
      return `${which} was never sealed: it was not written by this program.`;
    case 'broken':
      return `Line ${seal} of the chain, which seals ${which.replace(/^T/, 't').replace(/^V/, 'v')}, does not follow on the line before it.`;
  }
}
