/** A link that was revoked, or never was, says nothing of any bench: so it keeps people out of all of them. */
export default function NoSuchBoard() {
  return (
    <>
      <h1>KEEP OUT (not known)</h1>
      <p>
        This link shows no board, or no longer does. Keep out of every bench you are not sure about, and ask the shop
        for the link it uses now.
      </p>
    </>
  );
}
