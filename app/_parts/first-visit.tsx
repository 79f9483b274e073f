/** What a database without any shop says: look around, or begin. */
export function FirstVisit() {
  return (
    <>
      <h1>No shop here yet</h1>
      <p>
        Benches, bottles, recipes and programs live in a shop. Start one, or bring one in as a file; the demo shop is
        there to look around in.
      </p>
      <p className="apart">
        <a className="button" data-main="" href="/setup">
          Start my shop
        </a>
      </p>
    </>
  );
}
