'use client';

import type { FormState } from '@/shared/forms/form-state';
import { FormField } from '../../_parts/form-field';
import { movedRow } from '../../_parts/move-row';
import { RowButtons } from '../../_parts/row-buttons';
import parts from '../../_parts/thing-form.module.css';
import styles from './tools.module.css';

type ToolRowsProps<Row extends Readonly<Record<string, string>>> = {
  state: FormState;
  list: string;
  title: string;
  columns: readonly { column: keyof Row & string; label: string; like: string; type?: 'date' }[];
  rows: readonly Row[];
  blank: Row;
  add: string;
  onChange: (next: (rows: readonly Row[]) => Row[]) => void;
};

/** Things of one kind that the shop has, a row each, in the order in which it prefers them. */
export function ToolRows<Row extends Readonly<Record<string, string>>>(props: ToolRowsProps<Row>) {
  const { state, list, title, columns, rows, blank, add, onChange } = props;
  return (
    <section aria-labelledby={list}>
      <h2 id={list}>{title}</h2>
      <ol className={parts.rows}>
        {rows.map((row, number) => {
          const called = row.name || `${title.toLowerCase()} ${number + 1}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place; all of it is in the draft.
            <li key={number} className={styles.tool} aria-label={called}>
              <div className={styles.fields} data-columns={columns.length}>
                {columns.map(({ column, label, like, type = 'text' }) => (
                  <FormField key={column} state={state} name={`${list}[${number}].${column}`} label={label}>
                    {(wiring) => (
                      <input
                        {...wiring}
                        type={type}
                        value={row[column]}
                        placeholder={like}
                        onChange={({ target }) =>
                          onChange((now) =>
                            now.map((one, at) => (at === number ? { ...one, [column]: target.value } : one)),
                          )
                        }
                        autoComplete="off"
                      />
                    )}
                  </FormField>
                ))}
              </div>
              <RowButtons
                {...{ called, place: number, of: rows.length }}
                onMove={(by) => onChange((now) => movedRow(now, number, by))}
                onTakeOut={() => onChange((now) => now.filter((_, at) => at !== number))}
              />
            </li>
          );
        })}
      </ol>
      <p className={`apart ${parts.scripted}`}>
        <button type="button" onClick={() => onChange((now) => [...now, blank])}>
          {add}
        </button>
      </p>
    </section>
  );
}
