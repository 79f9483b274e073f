import styles from './hatching.module.css';

/** The hatchings that pictures on any page are filled with, drawn once. */
export function Hatching() {
  return (
    <svg className={styles.store} width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <Stripes id="hatch-closed" every={7} wide={3.4} turned={45} />
        <Stripes id="hatch-unknown" every={9} wide={2} turned={-45} />
        <Stripes id="hatch-waste" every={6} wide={2.2} turned={45} />
      </defs>
    </svg>
  );
}

function Stripes({ id, every, wide, turned }: { id: string; every: number; wide: number; turned: number }) {
  return (
    <pattern id={id} width={every} height={every} patternTransform={`rotate(${turned})`} patternUnits="userSpaceOnUse">
      <rect className={styles.stripe} width={wide} height={every} />
    </pattern>
  );
}
