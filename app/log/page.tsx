import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type LogLine, type LogScreen, logScreen } from '@/lib/views/log';
import { LOG_FIELDS, logPageIn, logQueryIn, logQueryText } from '@/shared/forms/log-query';
import { Damage } from '../_parts/damage';
import { EmergencyLink } from '../_parts/emergency-link';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { LeftOutList } from '../_parts/left-out-list';
import { OpeningsConfirmed } from '../_parts/openings-confirmed';
import { RecordsAccepted } from '../_parts/records-accepted';
import type { Search } from '../_parts/search';
import styles from './log.module.css';
import { LogFilter } from './log-filter';

export const metadata: Metadata = { title: 'Log' };

async function LogPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const screen = await logScreen(logQueryIn(search), clock, logPageIn(search));
  if (!screen) return <FirstVisit />;
  return (
    <>
      <UnreadOf of={{ list: 'applications' }} />
      <h1>Log</h1>
      <Damage sentence={screen.damage} />
      {screen.all === 0 ? (
        <EmptyPlace step={{ href: '/mix', text: 'Mix something' }}>
          Every spraying as it was done: what, where, when and by whom, kept for {screen.keepYears} years and longer.
          There is none yet.
        </EmptyPlace>
      ) : (
        <Log screen={screen} />
      )}
      <LeftOutList leftOut={screen.leftOut} />
      <OpeningsConfirmed openings={screen.openings} />
      <RecordsAccepted accepted={screen.accepted} />
    </>
  );
}

function Log({ screen }: { screen: LogScreen }) {
  const { query, lines, all, found, page, pages, newestHash, keepYears } = screen;
  const asked = logQueryText(query);
  const isAsked = LOG_FIELDS.some((field) => query[field] !== '');
  return (
    <>
      <LogFilter query={query} choices={screen.choices} />
      <p role="status" className={styles.found}>
        {isAsked ? `${found} of ${counted(all)}` : counted(all)}
        {pages > 1 && `, page ${page} of ${pages}, the newest first`}
      </p>
      {lines.length === 0 ? (
        <EmptyPlace step={{ href: '/log', text: 'Show the whole log' }}>No record is like that.</EmptyPlace>
      ) : (
        <ol className={styles.records}>
          {lines.map((line) => (
            <Line key={line.id} line={line} />
          ))}
        </ol>
      )}
      {pages > 1 && <Pages page={page} pages={pages} asked={asked} />}
      <p className={styles.links}>
        <a href={`/log/print?${asked}`}>Print these</a>
        <a href={`/api/v1/log/csv?${asked}`} download>
          Save as a list (CSV)
        </a>
        <a href={`/api/v1/log?${asked}`} download>
          Save with every version and hash (JSON)
        </a>
        <EmergencyLink />
      </p>
      <p className="soft small">
        Records are kept for {keepYears} years at least, and none is ever removed or written over. Each carries the hash
        of the one before it{newestHash && <>; the newest is {newestHash.slice(0, 16)}…</>}
      </p>
    </>
  );
}

function Pages({ page, pages, asked }: { page: number; pages: number; asked: string }) {
  const to = (other: number) => `/log?${asked}${asked === '' ? '' : '&'}page=${other}`;
  return (
    <nav className={styles.links} aria-label="Pages of the log">
      {page > 1 && <a href={to(page - 1)}>Newer</a>}
      <span className="soft">
        Page {page} of {pages}
      </span>
      {page < pages && <a href={to(page + 1)}>Older</a>}
    </nav>
  );
}

function Line({ line }: { line: LogLine }) {
  const { id, when, recipe, benches, products, by, counting, amendments, missing } = line;
  return (
    <li className={styles.record} data-counting={counting}>
      <p>
        <a href={`/log/${encodeURIComponent(id)}`}>
          <b>{when}</b>
        </a>
      </p>
      <p>
        {recipe} on {benches.join(', ')}
        <span className="soft">
          {' '}
          · {products.join(', ') || 'nothing noted'}
          {by !== null && ` · by ${by}`}
        </span>
      </p>
      <p className={styles.marks}>
        {counting === 'withdrawn' && <b>withdrawn</b>}
        {counting === 'unconfirmed' && <b className="grave">▲ waits to be confirmed</b>}
        {amendments > 0 && <span>amended {amendments === 1 ? 'once' : `${amendments} times`}</span>}
        {missing > 0 && <span>▲ {missing === 1 ? '1 field missing' : `${missing} fields missing`}</span>}
      </p>
    </li>
  );
}

const counted = (count: number): string => `${count} ${count === 1 ? 'record' : 'records'}`;

export default doorPage('see-records', LogPage);
