'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useRef, useState } from 'react';
import type { SheetShown } from '@/lib/views/safety-sheet';
import { sheetFault } from '@/shared/forms/safety-sheet';
import { freshId } from '../../_parts/use-command-id';
import { KeptSheets } from './kept-sheets';
import styles from './sheet.module.css';

type SheetFormProps = { shop: string; product: string; sheets: SheetShown[] };
type Said = { isGood: boolean; message: string } | null;

/** The safety data sheet of a product: what is kept, and a way to keep a newer one. */
export function SheetForm({ shop, product, sheets }: SheetFormProps) {
  const [said, setSaid] = useState<Said>(null);
  const [isSending, setSending] = useState(false);
  // The same file sent again after a silence is the same command.
  const command = useRef<{ file: File; id: string } | null>(null);
  const router = useRouter();
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const file = new FormData(form).get('sheet');
    if (!(file instanceof File) || file.name === '') return setSaid(wrong('Choose the PDF of the safety data sheet.'));
    if (command.current?.file !== file) command.current = { file, id: freshId() };
    setSending(true);
    const answer = await sendSheet(file, { commandId: command.current.id, shop, product });
    setSending(false);
    setSaid(answer);
    if (!answer?.isGood) return;
    form.reset();
    router.refresh();
  };
  return (
    <section aria-labelledby="sheet">
      <h2 id="sheet">Safety data sheet</h2>
      <KeptSheets shop={shop} product={product} sheets={sheets} />
      <form onSubmit={send} className={styles.form}>
        <div>
          <label htmlFor="sheet-file">
            {sheets.some(({ isAway }) => !isAway) ? 'Keep a newer one, a PDF' : 'Keep its sheet, a PDF'}
          </label>
          <input id="sheet-file" name="sheet" type="file" accept="application/pdf,.pdf" />
        </div>
        <button type="submit" disabled={isSending}>
          {isSending ? 'Sending…' : 'Keep it'}
        </button>
      </form>
      <noscript>
        <p className="soft">A file can be kept only where scripts run.</p>
      </noscript>
      {said && (
        <p role="alert" className={said.isGood ? undefined : 'grave'}>
          {said.message}
        </p>
      )}
    </section>
  );
}

const wrong = (message: string): Said => ({ isGood: false, message });

async function sendSheet(file: File, about: { commandId: string; shop: string; product: string }): Promise<Said> {
  const fault = sheetFault(new Uint8Array(await file.arrayBuffer()));
  if (fault !== null) return wrong(fault);
  try {
    const query = new URLSearchParams({ ...about, name: file.name.slice(-200) });
    const headers = { 'content-type': 'application/pdf' };
    const answer = await fetch(`/api/v1/sheet?${query}`, { method: 'POST', headers, body: file });
    const said = await answer.json();
    if (answer.ok) return { isGood: true, message: 'The sheet is kept.' };
    return wrong(said.faults?.[0]?.message ?? said.message);
  } catch {
    return wrong('The shop did not answer. Nothing was kept, as far as is known: press the button again.');
  }
}
