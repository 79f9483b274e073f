'use client';

/** Prints what is laid out. Without scripts, the browser's own menu does. */
export function PrintButton() {
  return (
    <button type="button" data-main="" onClick={() => window.print()}>
      Print
    </button>
  );
}
