import styles from './shelf-links.module.css';

const LINKS = [
  { href: '/shelf/receive', text: 'Receive' },
  { href: '/shelf/scan', text: 'Scan' },
  { href: '/shelf/new', text: 'New product' },
  { href: '/shelf/suppliers', text: 'Suppliers' },
  { href: '/shelf/labels', text: 'Labels' },
  { href: '/setup/csv', text: 'Lists in and out' },
];

/** What is done at the shelf, each on its own page. */
export function ShelfLinks() {
  return (
    <nav className={styles.links} aria-label="At the shelf">
      {LINKS.map(({ href, text }) => (
        <a key={href} href={href}>
          {text}
        </a>
      ))}
    </nav>
  );
}
