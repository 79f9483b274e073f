import { HowFar } from '../how-far';
import type { Progress } from './send-list';

/** How far a list is, with the way out as long as nothing is being changed. */
export function HowFarList({ progress, onStop }: { progress: Progress; onStop: (() => void) | null }) {
  const [words, share] = told(progress);
  return <HowFar {...{ words, share, onStop }} />;
}

/** A share is left out where nobody knows one: then the bar only says that something is going on. */
function told(progress: Progress): [words: string, share: number | undefined] {
  switch (progress.step) {
    case 'sending':
      return ['Sending the file.', progress.share];
    case 'read':
      return [`Read ${linesOf(progress.lines)}.`, 0];
    case 'checked':
      return [`Checked ${grouped(progress.count)} of ${grouped(progress.of)} lines.`, progress.count / progress.of];
    case 'together':
      return ['Looking at the shop with all of them in it.', undefined];
    case 'saving':
      return [`Saving ${linesOf(progress.lines)}.`, undefined];
  }
}

/** "5,000 lines" */
export const linesOf = (count: number): string => (count === 1 ? '1 line' : `${grouped(count)} lines`);

/** A whole number with its thousands apart, as the pages write them. */
export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
