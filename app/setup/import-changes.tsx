import type { Changed, CollectionChange } from '@/lib/engine/exchange/compare';
import { ColumnHeads } from '../_parts/column-heads';
import { FieldsChanged } from './fields-changed';
import { RefusedFile } from './refused-file';
import type { Preview } from './send-shop-file';
import styles from './setup.module.css';

type ImportChangesProps = {
  preview: Preview;
  isNew: boolean;
  isBusy: boolean;
  onConfirm: () => void;
  onCancel: () => void;
};

/** What a file would do: list by list what is added, what changes from what to what, and what is left alone. */
export function ImportChanges({ preview, isNew, isBusy, onConfirm, onCancel }: ImportChangesProps) {
  const { name, comparison } = preview;
  const { settings, collections, faults } = comparison;
  const lists = Object.entries(collections).map(([collection, change]) => ({ collection, change }));
  const added = sum(lists.map(({ change }) => change.added.length));
  const changed = sum(lists.map(({ change }) => change.changed.length)) + (settings.length > 0 ? 1 : 0);
  const isNothing = !isNew && added + changed === 0;
  return (
    <section aria-labelledby="would" className={styles.preview}>
      <h3 id="would">
        {isNew ? `A new shop, ${name}` : `What would change in ${name}`}: {added} added, {changed} changed
      </h3>
      <p className="soft">Nothing has changed yet. What the file does not name is left alone, never removed.</p>
      <CountTable lists={lists} />
      {settings.length > 0 && <ChangedThing name="The shop itself" fields={settings} />}
      {lists.map(({ collection, change }) => (
        <ListDetails key={collection} collection={collection} change={change} />
      ))}
      {faults.length > 0 && (
        <RefusedFile refused={{ message: 'The books hold otherwise. Put this right in the file first:', faults }} />
      )}
      <p className={styles.row}>
        {faults.length === 0 && !isNothing && (
          <button type="button" data-main="" disabled={isBusy} onClick={onConfirm}>
            {isBusy ? 'Bringing it in…' : isNew ? 'Make this shop' : changesText(added + changed)}
          </button>
        )}
        <button type="button" disabled={isBusy} onClick={onCancel}>
          {isNothing ? 'Nothing would change. Close' : 'Leave it'}
        </button>
      </p>
    </section>
  );
}

const changesText = (count: number): string => (count === 1 ? 'Make this change' : `Make these ${count} changes`);

const sum = (counts: number[]): number => counts.reduce((total, count) => total + count, 0);

type Listed = { collection: string; change: CollectionChange };

function CountTable({ lists }: { lists: Listed[] }) {
  return (
    <table className={styles.counts}>
      <ColumnHeads
        of={['List', { number: 'added' }, { number: 'changed' }, { number: 'the same' }, { number: 'left alone' }]}
      />
      <tbody>
        {lists.map(({ collection, change }) => (
          <tr key={collection}>
            <th scope="row">{collection}</th>
            <td className="number">{change.added.length}</td>
            <td className="number">{change.changed.length}</td>
            <td className="number">{change.unchanged.length}</td>
            <td className="number">{change.leftAlone.length}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ListDetails({ collection, change: { added, changed } }: Listed) {
  return (
    <>
      {changed.map((thing) => (
        <ChangedThing key={thing.id} name={`${collection}: ${nameOf(thing)}`} fields={thing.fields} />
      ))}
      {added.length > 0 && (
        <details className={styles.added}>
          <summary>
            {added.length} added to {collection}
          </summary>
          <p>{added.map(nameOf).join(', ')}</p>
        </details>
      )}
    </>
  );
}

const nameOf = ({ id, name }: { id: string; name: string | null }): string => name ?? id;

function ChangedThing({ name, fields }: { name: string; fields: Changed['fields'] }) {
  return (
    <div>
      <b>{name}</b>
      <FieldsChanged fields={fields} />
    </div>
  );
}
