import styles from './emergency-link.module.css';

/** One tap to whom to call, first aid and safety data sheets, from wherever something can go wrong. Where room is short, a sign alone. */
export function EmergencyLink({ isShort = false }: { isShort?: boolean }) {
  return (
    <a className={styles.emergency} href="/emergency">
      <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
        <path d="M7 1 h6 v6 h6 v6 h-6 v6 h-6 v-6 h-6 v-6 h6 Z" />
      </svg>
      <span className={isShort ? 'spoken' : undefined}>In an emergency</span>
    </a>
  );
}
