'use client';

import { useActionState } from 'react';
import type { SheetShown } from '@/lib/views/safety-sheet';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useCommandId } from '../../_parts/use-command-id';
import { shelveSheetAction } from '../product-actions';
import styles from './sheet.module.css';

type KeptSheetsProps = { shop: string; product: string; sheets: SheetShown[] };
type SheetProps = Omit<KeptSheetsProps, 'sheets'> & { sheet: SheetShown };

/** The safety data sheets that are kept of a product: the one that counts, earlier ones, and those put away. */
export function KeptSheets({ sheets, ...of }: KeptSheetsProps) {
  const [newest, ...earlier] = sheets.filter(({ isAway }) => !isAway);
  const away = sheets.filter(({ isAway }) => isAway);
  return (
    <>
      {newest ? (
        <KeptSheet sheet={newest} {...of} />
      ) : (
        <p className="grave">None is kept that counts. It is wanted when somebody is hurt.</p>
      )}
      <Folded name="Earlier ones" sheets={earlier} {...of} />
      <Folded name="Put away" sheets={away} {...of} />
    </>
  );
}

function Folded({ name, sheets, ...of }: KeptSheetsProps & { name: string }) {
  if (sheets.length === 0) return null;
  return (
    <details>
      <summary className={styles.open}>
        {name} ({sheets.length})
      </summary>
      {sheets.map((sheet) => (
        <KeptSheet key={sheet.number} sheet={sheet} {...of} />
      ))}
    </details>
  );
}

function KeptSheet({ shop, product, sheet }: SheetProps) {
  const { number, href, fileName, when, who, isAway } = sheet;
  const [state, send, isSending] = useActionState(shelveSheetAction, IDLE);
  const commandId = useCommandId(state);
  return (
    <form action={send} className={styles.kept}>
      <a className={styles.open} href={href}>
        {fileName}
      </a>
      <span className="soft">
        kept {when} by {who}
      </span>
      <HiddenFields of={{ commandId, shop, product, number: `${number}`, away: isAway ? 'no' : 'yes' }} />
      <button type="submit" disabled={isSending || commandId === ''}>
        {isAway ? 'Take it out again' : 'Put it away'}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
