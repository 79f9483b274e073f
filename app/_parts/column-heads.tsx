type ColumnHeadsProps = {
  /** What stands over each column; over numbers, as `{ number }`, to the right. */
  of: readonly (string | { number: string })[];
};

/** The head of a table, one word or two over each column. */
export function ColumnHeads({ of }: ColumnHeadsProps) {
  return (
    <thead>
      <tr>
        {of.map((column) => {
          const [name, isNumber] = typeof column === 'string' ? [column, false] : [column.number, true];
          return (
            <th key={name} scope="col" className={isNumber ? 'number' : undefined}>
              {name}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
