import styles from './buy.module.css';

const PAGES = [
  { href: '/buy', name: 'When to order' },
  { href: '/buy/plan', name: 'Purchase plan' },
  { href: '/buy/equivalents', name: 'Cheaper equivalents' },
  { href: '/buy/orders', name: 'Orders' },
  { href: '/buy/budget', name: 'Budget' },
];

/** The pages of buying. */
export function BuyLinks({ here }: { here: string }) {
  return (
    <nav aria-label="Buying" className={`${styles.pages} unprinted`}>
      {PAGES.map(({ href, name }) => (
        <a key={href} href={href} aria-current={href === here ? 'page' : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
}
