import { type ComponentProps, useEffect } from 'react';
import { WorkingSheet } from './working-sheet';

/** A working that was opened in place: reading begins at its heading. */
export function WorkingOpened(props: ComponentProps<typeof WorkingSheet>) {
  const { working, headingId } = props;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each working that is opened in turn begins at its heading.
  useEffect(() => {
    const heading = document.getElementById(headingId);
    heading?.closest('dialog')?.scrollTo(0, 0);
    heading?.focus();
  }, [headingId, working]);
  return <WorkingSheet {...props} />;
}
