import { redirect } from 'next/navigation';
import { canHere } from '@/lib/access/can-here';
import { doorPage } from '@/lib/door/door-page';
import { placesFor } from './_parts/places';

/** The front of the shop is the first place that somebody may see: Today, for most. */
async function Front(): Promise<never> {
  const [first] = placesFor(await canHere());
  redirect(first?.href ?? '/emergency');
}

export default doorPage('be-here', Front);
