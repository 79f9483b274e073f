import { redirect } from 'next/navigation';
import { doorPage } from '@/lib/door/door-page';

/** Today is the front of the shop. */
function Front(): never {
  redirect('/today');
}

export default doorPage('be-here', Front);
