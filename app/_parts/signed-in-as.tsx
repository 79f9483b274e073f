import { SignOutButton } from '../sign-in/sign-out-button';
import styles from './entered-as.module.css';

/** Who is signed in in this browser, whose name entries carry, and the way out. */
export const SignedInAs = ({ name, role }: { name: string; role: string | null }) => (
  <details className={styles.who}>
    <summary>
      Signed in as{' '}
      <b>
        {name}
        {role !== null && `, ${role}`}
      </b>
    </summary>
    <div className={styles.form}>
      <SignOutButton />
    </div>
  </details>
);
