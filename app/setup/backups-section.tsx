import type { BackupsSeen } from '@/lib/views/backups';
import { BackUpButton } from './back-up-button';

/** How old the last backup is, where the backups lie, and a button that makes one now. */
export function BackupsSection({ backups }: { backups: BackupsSeen }) {
  const { newest, faulty, count, folder, failure } = backups;
  return (
    <section aria-labelledby="backups">
      <h2 id="backups">Backups</h2>
      {newest ? (
        <p>
          The last one is <b>{newest.age}</b>: {newest.when}. It was checked after writing, and all of it is sound.
        </p>
      ) : (
        <p>
          <b>There is no sound backup yet.</b>
        </p>
      )}
      {faulty && (
        <p role="alert" className="grave">
          The newest backup has faults, so it is not counted: <code>{faulty}</code>
        </p>
      )}
      {failure && (
        <p role="alert" className="grave">
          The last backup could not be made. {failure}
        </p>
      )}
      <BackUpButton />
      <p className="soft small">
        {count} {count === 1 ? 'backup' : 'backups'} so far, one each night at 03:30 in <code>{folder}</code>. A disk
        can break: keep a copy on another one as well, with <code>npm run backup -- FOLDER</code>. To go back to a
        backup, stop the shop and run <code>npm run restore -- {newest ? `"${newest.file}"` : 'FILE'}</code>.
      </p>
    </section>
  );
}
