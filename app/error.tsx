'use client';

/** Something broke while a page was being made. Nothing is shown rather than something wrong. */
export default function PageError({ error, retry }: { error: unknown; retry: () => void }) {
  return (
    <>
      <h1>This page could not be made</h1>
      <p>
        Nothing was changed. Until it can be shown again, keep out of any bench you are not sure about.
        {digestOf(error) && ` The details are in the server’s log under ${digestOf(error)}.`}
      </p>
      <p className="apart">
        <button type="button" data-main="" onClick={retry}>
          Try again
        </button>
      </p>
    </>
  );
}

function digestOf(error: unknown): string | null {
  return error instanceof Error && 'digest' in error ? String(error.digest) : null;
}
