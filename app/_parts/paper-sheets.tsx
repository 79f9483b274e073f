import type { ReactNode } from 'react';
import styles from './paper-sheets.module.css';

type PaperSheetsProps = { size: 'letter' | 'a4'; children: ReactNode };

/** Sheets of paper in the size they are printed in, each child one of them. On paper there is nothing else of the page. */
export const PaperSheets = ({ size, children }: PaperSheetsProps) => (
  <div className={styles.sheets} data-sheet={size}>
    {children}
  </div>
);
