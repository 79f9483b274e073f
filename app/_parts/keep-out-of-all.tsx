import { Refreshed } from './refreshed';

/** Nothing can be read, so nobody may stand anywhere. */
export function KeepOutOfAll() {
  return (
    <>
      <Refreshed />
      <h1>KEEP OUT (not known)</h1>
      <p>
        The shop’s records cannot be read now, so keep out of every bench. Nothing was changed. The reason stands on{' '}
        <a href="/setup#database">Setup</a> and in the log of the shop’s computer.
      </p>
      <p className="apart">
        <a className="button" href="/keep-out">
          Look again
        </a>
      </p>
    </>
  );
}
