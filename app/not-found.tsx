import type { Metadata } from 'next';

export const metadata: Metadata = { title: 'Not here' };

export default function NotFound() {
  return (
    <>
      <h1>There is nothing here</h1>
      <p>
        The address names something this shop does not have. It may have been another shop, or another day.{' '}
        <a href="/today">Go to today</a>
      </p>
    </>
  );
}
