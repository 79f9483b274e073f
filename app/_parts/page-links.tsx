import styles from './page-links.module.css';

type PageLinksProps = {
  of: { page: number; pages: number; isAll: boolean };
  /** What the list is of, for whoever hears the links. */
  label: string;
  href: (page: string) => string;
};

/** The pages of a long list, and all of it at once for printing. Nothing where the list fits on one. */
export function PageLinks({ of: { page, pages, isAll }, label, href }: PageLinksProps) {
  if (pages < 2) return null;
  return (
    <nav className={styles.pages} aria-label={label}>
      {isAll ? (
        <a href={href('')}>Show it in {pages} pages</a>
      ) : (
        <>
          {page > 1 && <a href={href(page === 2 ? '' : String(page - 1))}>← Back</a>}
          <span className="soft">
            Page {page} of {pages}
          </span>
          {page < pages && <a href={href(String(page + 1))}>On →</a>}
          <a href={href('all')}>All, to print</a>
        </>
      )}
    </nav>
  );
}
