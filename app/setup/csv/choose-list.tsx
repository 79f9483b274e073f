'use client';

import { useRef, useState } from 'react';
import { decodeText } from '@/shared/csv/decode';
import field from '../../_parts/form-field.module.css';
import { useHalfTyped } from '../../_parts/use-half-typed';
import styles from './csv.module.css';
import type { ListName } from './send-list';

/** A list as somebody chose it: which one, its text, and what is to be said about how it was read. */
export type Chosen = { list: ListName; text: string; name: string; note: string | null };

type ChooseListProps = { isBusy: boolean; isDone: boolean; onChosen: (chosen: Chosen) => void };

const LISTS = [
  ['products', 'Products', 'first'],
  ['offers', 'Offers', 'of products that are there'],
  ['lots', 'Lots', 'bottles of products that are there'],
] as const;

/** The largest file that can be sent, with room for what JSON adds to it. */
const LARGEST = 9_000_000;

/** Which list it is, and where it comes from. */
export function ChooseList({ isBusy, isDone, onChosen }: ChooseListProps) {
  const form = useRef<HTMLFormElement>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  useHalfTyped(form, 'bring-list', isDone);

  const send = async (sent: FormData) => {
    const file = sent.get('file');
    const isFile = file instanceof File && file.size > 0;
    const read = isFile ? decodeText(new Uint8Array(await file.arrayBuffer())) : null;
    const text = read?.text ?? String(sent.get('text') ?? '');
    const said = text.trim() === '' ? NOTHING : text.length > LARGEST ? TOO_LARGE : null;
    setWrong(said);
    if (said) return;
    const note = read && read.encoding !== 'UTF-8' ? encodingNote(read.encoding) : null;
    onChosen({ list: listIn(sent.get('list')), text, name: isFile ? file.name : 'what was pasted', note });
  };

  return (
    <form
      ref={form}
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        send(new FormData(event.currentTarget));
      }}
    >
      <noscript>
        <p>Bringing a list in needs scripts in this browser.</p>
      </noscript>
      <fieldset className={styles.which}>
        <legend>Which list it is</legend>
        {LISTS.map(([list, title, about], place) => (
          <label key={list} className="tick">
            <input type="radio" name="list" value={list} defaultChecked={place === 0} />
            <span>
              {title} <small className="soft">{about}</small>
            </span>
          </label>
        ))}
      </fieldset>
      <div>
        <label htmlFor="file">Choose a CSV file</label>
        <input id="file" name="file" type="file" accept=".csv,.tsv,.txt,text/csv,text/plain" />
      </div>
      <div>
        <label htmlFor="text">or paste the lines</label>
        <textarea
          id="text"
          name="text"
          rows={4}
          spellCheck={false}
          aria-invalid={wrong !== null}
          aria-describedby="told"
        />
        <p id="told" className={wrong ? field.fault : field.hint}>
          {wrong ?? 'The first line names the columns. What would change is shown before anything does.'}
        </p>
      </div>
      <p>
        <button type="submit" data-main="" disabled={isBusy}>
          Show what would change
        </button>
      </p>
    </form>
  );
}

const NOTHING = 'There is no list yet. Choose a file, or paste its lines here.';
const TOO_LARGE = 'This is more than 9 MB. Divide the list, and bring in its parts one after another.';

const encodingNote = (encoding: string): string =>
  `This file is not UTF-8 and was read as ${encoding}. Look whether letters such as é, ü and ° are right.`;

const listIn = (value: FormDataEntryValue | null): ListName =>
  LISTS.find(([list]) => list === value)?.[0] ?? 'products';
