import { redirect } from 'next/navigation';

/** Today is the front of the shop. */
export default function Front(): never {
  redirect('/today');
}
