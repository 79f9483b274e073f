/** Where no script runs, the browser reads the page anew twice a minute. */
export function Refreshed() {
  return (
    <noscript>
      <meta httpEquiv="refresh" content="30" />
    </noscript>
  );
}
