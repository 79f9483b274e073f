import type { Flag, Severity } from '@/lib/engine/rules/flag';
import styles from './flag-lines.module.css';
import { EnterLink } from './to-enter';

const WORDS: Record<Severity, string> = { stop: 'Stop', warn: 'Look', note: 'Note' };

/** What a person should know before it happens, the gravest first. */
export function FlagLines({ flags }: { flags: Flag[] }) {
  const lines = flags.map(({ rule, on, program, product, severity, message, toEnter }) => ({
    key: `${rule} ${on} ${program} ${product} ${message}`,
    ...{ severity, message, toEnter },
  }));
  return <SeverityLines lines={lines} />;
}

/** One that is told twice in the same words has a key of its own. */
type SeverityLine = { key?: string; severity: Severity; message: string; toEnter?: Flag['toEnter'] };

/** Things that are more or less grave: a shape, a word, and the fact in whole sentences. */
export function SeverityLines({ lines }: { lines: readonly SeverityLine[] }) {
  if (lines.length === 0) return null;
  return (
    <ul className={styles.flags}>
      {lines.map(({ severity, message, toEnter = [], key = message }) => (
        <li key={key} data-severity={severity}>
          <SeverityMark severity={severity} />
          <span>
            <b>{WORDS[severity]}:</b> {message}
            {toEnter.map(({ at, words }) => (
              <span key={words}>
                {' '}
                <EnterLink at={at} of={words} />
              </span>
            ))}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The shape of a severity, which the word beside it repeats. */
export function SeverityMark({ severity }: { severity: Severity }) {
  return (
    <svg className={styles.mark} data-severity={severity} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      {severity === 'stop' && <path d="M0 0 H16 V16 H0 Z M4.5 4.5 L11.5 11.5 M11.5 4.5 L4.5 11.5" />}
      {severity === 'warn' && <path d="M8 1 L15 8 L8 15 L1 8 Z M8 4.5 V8.5 M8 10.8 V11.2" />}
      {severity === 'note' && <path d="M8 1 A7 7 0 1 1 7.99 1 Z M8 7.5 V11.5 M8 4.6 V5" />}
    </svg>
  );
}
