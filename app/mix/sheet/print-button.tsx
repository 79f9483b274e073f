'use client';

/** Prints the page. The sheet fits one side of Letter and of A4. */
export function PrintButton() {
  return (
    <button type="button" onClick={() => window.print()}>
      Print
    </button>
  );
}
