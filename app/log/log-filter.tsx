import type { LogScreen } from '@/lib/views/log';
import { dayFault } from '@/shared/forms/log-query';
import styles from './log.module.css';

/** Finds records by bench, product, days and person. It works without scripts. */
export function LogFilter({ query, choices }: Pick<LogScreen, 'query' | 'choices'>) {
  return (
    <search>
      <form className={styles.filter} action="/log">
        <Choose name="bench" label="Bench" chosen={query.bench} choices={choices.benches} />
        <Choose name="product" label="Product" chosen={query.product} choices={choices.products} />
        <OnDay name="from" label="From" typed={query.from} />
        <OnDay name="to" label="Until" typed={query.to} />
        <div>
          <label htmlFor="person">Person</label>
          <input id="person" name="person" defaultValue={query.person} autoComplete="off" maxLength={200} />
        </div>
        <p className={styles.find}>
          <button type="submit">Find</button>
          <a href="/log">Everything</a>
        </p>
      </form>
    </search>
  );
}

type ChooseProps = { name: string; label: string; chosen: string; choices: { id: string; name: string }[] };

function Choose({ name, label, chosen, choices }: ChooseProps) {
  return (
    <div>
      <label htmlFor={name}>{label}</label>
      <select id={name} name={name} defaultValue={chosen}>
        <option value="">any</option>
        {choices.map(({ id, name: text }) => (
          <option key={id} value={id}>
            {text}
          </option>
        ))}
      </select>
    </div>
  );
}

function OnDay({ name, label, typed }: { name: string; label: string; typed: string }) {
  const fault = dayFault(typed);
  return (
    <div>
      <label htmlFor={name}>{label}</label>
      <input
        id={name}
        name={name}
        type="date"
        defaultValue={fault ? '' : typed}
        aria-invalid={fault !== null}
        aria-describedby={fault ? `${name}-fault` : undefined}
      />
      {fault && (
        <p id={`${name}-fault`} className="grave small">
          {fault}
        </p>
      )}
    </div>
  );
}
