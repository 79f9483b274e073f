import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { unreadOf } from '@/lib/views/unread-here';
import { Unread } from './unread';

type Of = Parameters<typeof unreadOf>[1];

/** What of one thing, or of one list, cannot be read: said where somebody looks at it. Nothing when all can. */
export async function UnreadOf({ of }: { of: Of }) {
  return <Unread sentence={await unreadOf(clock, of)} />;
}

/** The page of a thing that is not there: because it cannot be read, or because there is none. */
export async function UnreadOrMissing({ of }: { of: Of }) {
  const sentence = await unreadOf(clock, of);
  if (sentence === null) notFound();
  return (
    <>
      <h1>This cannot be read</h1>
      <Unread sentence={sentence} />
    </>
  );
}
