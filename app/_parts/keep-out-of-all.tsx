import { clock } from '@/lib/clock';
import { keepOutBoard } from '@/lib/views/keep-out-board';
import { Refreshed } from './refreshed';

/** Nothing can be read, so nobody may stand anywhere. Every bench is named as far as it is known. */
export async function KeepOutOfAll() {
  const board = await keepOutBoard(clock);
  return (
    <>
      <Refreshed />
      <h1>KEEP OUT (not known)</h1>
      <p>
        The shop’s records cannot be read now, so keep out of every bench. Nothing was changed. The reason stands on{' '}
        <a href="/setup#database">Setup</a> and in the log of the shop’s computer.
      </p>
      <ul>
        {board?.benches.map(({ id, name }) => (
          <li key={id}>
            <b>{name}</b>: KEEP OUT, not known until when
          </li>
        ))}
      </ul>
      <p className="apart">
        <a className="button" href="/keep-out">
          Look again
        </a>
      </p>
    </>
  );
}
