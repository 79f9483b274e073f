'use client';

import './paper.css';

/** The shop itself could not be read, so not even its name can be shown. */
export default function ShopError({ retry }: { error: unknown; retry: () => void }) {
  return (
    <html lang="en">
      <body style={{ padding: '2rem' }}>
        <title>Bench & Bottle cannot read the shop</title>
        <main>
          <h1>The shop could not be read</h1>
          <p>
            Nothing was changed. Keep out of any bench you are not sure about. The reason is in the log of the server;
            it may be that the data folder was moved, or that the disk is full.
          </p>
          <p style={{ marginTop: '1rem' }}>
            <button type="button" data-main="" onClick={retry}>
              Try again
            </button>
          </p>
        </main>
      </body>
    </html>
  );
}
