import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type PrintedLog, printedLog, type RecordSeen } from '@/lib/views/record';
import { logPageIn, logQueryIn, logQueryText } from '@/shared/forms/log-query';
import { Damage } from '../../_parts/damage';
import { FirstVisit } from '../../_parts/first-visit';
import { OpeningsConfirmed } from '../../_parts/openings-confirmed';
import { PrintButton } from '../../_parts/print-button';
import { RecordFacts } from '../../_parts/record-facts';
import { RecordsAccepted } from '../../_parts/records-accepted';
import type { Search } from '../../_parts/search';
import styles from './print.module.css';

export const metadata: Metadata = { title: 'The log, to print' };

/** Records for an inspector's desk, on Letter or A4: everything that must be kept of each, and its versions. */
async function PrintedLogPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const query = logQueryIn(search);
  const log = await printedLog(query, search.all === undefined ? logPageIn(search) : 'all', clock);
  if (!log) return <FirstVisit />;
  return (
    <>
      <p className="unprinted">
        <a href={`/log?${logQueryText(query)}`}>Back to the log</a>
      </p>
      <h1>Records of sprayings</h1>
      <Head log={log} />
      <p className="unprinted">
        <PrintButton />
      </p>
      {log.parts > 1 && <Parts log={log} asked={logQueryText(query)} />}
      <Damage sentence={log.damage} />
      <ol className={styles.records}>
        {log.records.map((record) => (
          <Sheet key={record.id} record={record} />
        ))}
      </ol>
      {log.records.length === 0 && <p>No record is like that.</p>}
      <OpeningsConfirmed openings={log.openings} />
      <RecordsAccepted accepted={log.accepted} />
    </>
  );
}

/** Years of records are many sheets: they come in parts, or all at once for whoever wants that. */
function Parts({ log: { part, parts }, asked }: { log: PrintedLog; asked: string }) {
  const to = (more: string) => `/log/print?${asked}${asked === '' ? '' : '&'}${more}`;
  return (
    <nav className="unprinted" aria-label="Parts of the log">
      {part === null ? (
        <a href={to('page=1')}>Print it in {parts} parts</a>
      ) : (
        <>
          Part {part} of {parts}, the newest records first {part > 1 && <a href={to(`page=${part - 1}`)}>Newer</a>}{' '}
          {part < parts && <a href={to(`page=${part + 1}`)}>Older</a>} <a href={to('all=yes')}>All at once</a>
        </>
      )}
    </nav>
  );
}

function Head({ log: { shop, printedAt, found, part, parts, newestHash } }: { log: PrintedLog }) {
  return (
    <p className={styles.head}>
      {shop.name}
      {shop.address && `, ${shop.address}`}
      {shop.contact && ` · ${shop.contact}`}
      <br />
      {found} {found === 1 ? 'record' : 'records'}
      {part !== null && parts > 1 && `, part ${part} of ${parts}`}, printed {printedAt}, times of {shop.zone}
      {newestHash && (
        <>
          <br />
          Newest hash {newestHash}
        </>
      )}
    </p>
  );
}

function Sheet({ record }: { record: RecordSeen }) {
  const { id, recipe, when, counting, missing, versions } = record;
  const [newest] = versions;
  return (
    <li className={styles.record}>
      <h2>
        {when} · {recipe}
        {counting === 'withdrawn' && ' · WITHDRAWN, entered in error'}
        {counting === 'unconfirmed' && ' · amendment not confirmed'}
      </h2>
      <RecordFacts record={record} isPaper />
      {missing.map(({ message }) => (
        <p key={message}>▲ {message}</p>
      ))}
      {versions
        .filter(({ number }) => number > 1)
        .map(({ number, who, when: at, reason, confirmed }) => (
          <p key={number} className={styles.version}>
            Version {number}, {who}, {at}: {reason}
            {confirmed && `. Confirmed by ${confirmed.who}, ${confirmed.when}: ${confirmed.why}`}
          </p>
        ))}
      <p className={styles.version}>
        Record {id}, version {newest?.number}
        {newest && newest.number === 1 && `, entered by ${newest.who}, ${newest.when}`}
        {newest?.seal && `. Line ${newest.seal.line}, ${newest.seal.hash}`}
      </p>
    </li>
  );
}

export default doorPage('see-records', PrintedLogPage);
