import type { ShelfQuery } from '@/lib/views/shelf';
import styles from './shelf-filter.module.css';

/** What to show of the shelf. A plain form: it ends up in the address, and so can be kept and shared. */
export function ShelfFilter({ query, kinds }: { query: ShelfQuery; kinds: string[] }) {
  return (
    <form className={styles.filter} action="/shelf" aria-label="What to show">
      <div>
        <label htmlFor="find">Name or substance</label>
        <input id="find" name="find" type="search" defaultValue={query.find} />
      </div>
      <div>
        <label htmlFor="kind">Kind</label>
        <select id="kind" name="kind" defaultValue={query.kind}>
          <option value="">every kind</option>
          {kinds.map((kind) => (
            <option key={kind}>{kind}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="sort">In order of</label>
        <select id="sort" name="sort" defaultValue={query.sort}>
          <option value="name">name</option>
          <option value="dies">what dies first</option>
        </select>
      </div>
      <div>
        <label htmlFor="as">Shown as</label>
        <select id="as" name="as" defaultValue={query.as}>
          <option value="bottles">bottles</option>
          <option value="table">a table</option>
        </select>
      </div>
      <button type="submit">Show</button>
    </form>
  );
}
