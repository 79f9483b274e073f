import styles from './fields-changed.module.css';

type FieldChanged = { field: string; from?: unknown; to?: unknown };

/** What a file would change in one thing, field by field: from what to what. */
export const FieldsChanged = ({ fields }: { fields: readonly FieldChanged[] }) => (
  <ul className={styles.fields}>
    {fields.map(({ field, from, to }) => (
      <li key={field}>
        <code>{field}</code> from <del>{plain(from)}</del> to <ins>{plain(to)}</ins>
      </li>
    ))}
  </ul>
);

/** A value as a file writes it, without the quotes of a text. */
const plain = (value: unknown): string => {
  if (value === null || value === undefined) return 'nothing';
  return typeof value === 'string' ? value : JSON.stringify(value);
};
