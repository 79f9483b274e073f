import styles from './after-list.module.css';

type AfterProps = { benches: { id: string; name: string }[]; leftover: string | null };

/** What is still to be done once the last plant is sprayed. The labels govern. */
export function AfterList({ benches, leftover }: AfterProps) {
  return (
    <section aria-labelledby="after">
      <h2 id="after">After spraying</h2>
      <ol className={styles.after}>
        {benches.length > 0 && (
          <li>
            Hang the notice:{' '}
            {benches.map(({ id, name }, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <a href={`/keep-out/notice?bench=${encodeURIComponent(id)}`}>{name}</a>
              </span>
            ))}
            .
          </li>
        )}
        <li>
          {leftover
            ? `Spray left over: ${leftover}. Never into a drain.`
            : 'Keep no mixed spray: what is left goes where the labels allow, and never into a drain.'}
        </li>
        <li>Rinse the sprayer three times. Spray each rinse onto the same plants.</li>
        <li>Wash gloves first, then take off what you wore and wash it apart. Wash hands and face.</li>
        <li>Under a roof: ventilate before anybody goes in, as the labels say.</li>
      </ol>
      <p className="soft">The label governs.</p>
    </section>
  );
}
