import type { Metadata } from 'next';
import { doorPage } from '@/lib/door/door-page';
import { RULE_GROUPS } from '@/lib/views/rule-sources/rule-groups';
import type { RuleFrom, Source } from '@/lib/views/rule-sources/rule-source';
import styles from './rules.module.css';

export const metadata: Metadata = { title: 'Where the rules come from' };

function RulesPage() {
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Where the rules come from</h1>
      <p>
        <b>The label in your hand comes first, then local rules and licensed practice.</b> What this program adds to
        them stands here, each rule with its source.
      </p>
      <p className="soft">
        A source marked <i>from memory</i> was not looked up again. <i>Common practice</i> means that no source prints
        the rule.
      </p>
      {RULE_GROUPS.map(({ id, title, rules }) => (
        <section key={id} aria-labelledby={id}>
          <h2 id={id}>{title}</h2>
          <dl className={styles.rules}>
            {rules.map((rule) => (
              <Rule key={rule.title} rule={rule} />
            ))}
          </dl>
        </section>
      ))}
    </>
  );
}

function Rule({ rule: { title, says, from } }: { rule: RuleFrom }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        {says}
        <ul className={styles.from}>
          {from.map((source) => (
            <li key={nameOf(source)}>{nameOf(source)}</li>
          ))}
        </ul>
      </dd>
    </div>
  );
}

function nameOf(source: Source): string {
  if (source.basis === 'practice') return 'Common practice, no source';
  return source.basis === 'memory' ? `${source.name} (from memory)` : source.name;
}

export default doorPage('see-shop', RulesPage);
