import type { Metadata } from 'next';
import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { doorPage } from '@/lib/door/door-page';
import { type RecordScreen, recordScreen, type VersionSeen } from '@/lib/views/record';
import { Damage } from '../../_parts/damage';
import { EmergencyLink } from '../../_parts/emergency-link';
import { RecordFacts } from '../../_parts/record-facts';
import styles from './record.module.css';
import { ConfirmForm, WithdrawForm } from './record-form';

export const metadata: Metadata = { title: 'A record' };

type OfRecord = { params: Promise<{ application: string }> };

/** One record of a spraying: everything that must be kept of it, every version, and what can be done about it. */
async function RecordPage({ params }: OfRecord) {
  const screen = await recordScreen(decodeURIComponent((await params).application));
  const of = { list: 'applications' as const, id: decodeURIComponent((await params).application) };
  if (!screen) return <UnreadOrMissing of={of} />;
  const { record, about, damage } = screen;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/log">Log</a>
      </p>
      <h1>{record.recipe}</h1>
      <p className="soft">{record.when}</p>
      <Damage sentence={damage} />
      <Standing screen={screen} />
      <RecordFacts record={record} />
      <p className={styles.deeds}>
        <a className="button" href={`/log/${encodeURIComponent(record.id)}/amend`}>
          Amend it
        </a>
        <a href={`/mix/done/${encodeURIComponent(record.id)}`}>What it cost</a>
        <EmergencyLink />
      </p>
      <WithdrawForm about={about} isWithdrawn={record.isWithdrawn} />
      <section aria-labelledby="versions">
        <h2 id="versions">Every version</h2>
        <ol className={styles.versions}>
          {record.versions.map((version) => (
            <Version key={version.number} version={version} />
          ))}
        </ol>
      </section>
      <p className="soft small">
        Kept at least until {record.keptUntil}. Nothing in the log is removed after that either.
      </p>
    </>
  );
}

/** What a record lacks, whether it counts, and the word that an amendment still needs. */
function Standing({ screen: { record, about } }: { screen: RecordScreen }) {
  const [newest] = record.versions;
  return (
    <>
      {record.counting === 'withdrawn' && (
        <p className={styles.notice}>
          <b>Withdrawn.</b> It was entered in error, stays on record and counts nowhere.
        </p>
      )}
      {record.missing.length > 0 && (
        <ul className={styles.missing} aria-label="What this record lacks">
          {record.missing.map(({ message }) => (
            <li key={message}>▲ {message}</li>
          ))}
        </ul>
      )}
      {newest?.isPending && (
        <section aria-labelledby="pending" className={styles.pending}>
          <h2 id="pending">▲ Version {newest.number} waits to be confirmed</h2>
          <p>
            {newest.number === 1
              ? 'It was entered when its interval was over already, and would open a bench at once. '
              : 'It would open a bench earlier, or withdraws the record. '}
            Until somebody confirms it,{' '}
            {newest.until === null ? (
              <b>people keep out, and nobody knows until when.</b>
            ) : (
              <b>people keep out until {newest.until}.</b>
            )}
          </p>
          <ConfirmForm about={about} />
        </section>
      )}
    </>
  );
}

function Version({ version }: { version: VersionSeen }) {
  const { number, who, when, reason, differs, confirmed, isPending, seal } = version;
  return (
    <li>
      <p>
        <b>{number === 1 ? 'The record' : `Amendment, version ${number}`}</b>, entered by {who}, {when}
        {reason !== null && <>: {reason}</>}
      </p>
      {differs.map(({ name, from, to }) => (
        <p key={name} className={styles.differs}>
          {name}: <del>{from ?? 'not known'}</del> → <ins>{to ?? 'not known'}</ins>
        </p>
      ))}
      {confirmed && (
        <p>
          Confirmed by {confirmed.who}, {confirmed.when}: {confirmed.why}
        </p>
      )}
      {isPending && <p className="grave">▲ not confirmed</p>}
      <p className={styles.hash}>{seal ? `line ${seal.line}, ${seal.hash}` : 'not sealed'}</p>
    </li>
  );
}

export default doorPage('see-records', RecordPage);
