import { ShowShopButton } from '../setup/show-shop-button';
import styles from './which-shop.module.css';

/** Asks for the shop that this device works in, in the place of the page that was asked for, which follows the answer. */
export function WhichShop({ shops }: { shops: readonly { id: string; name: string; isDemo: boolean }[] }) {
  return (
    <>
      <h1 data-which-shop>Which shop is this device in?</h1>
      <p>There are several shops here. This device stays in the one you choose until somebody changes it in Setup.</p>
      <ul className={styles.shops}>
        {shops.map((shop) => (
          <li key={shop.id}>
            <span>
              <b>{shop.name}</b> {shop.isDemo && <small className="soft">the demo shop</small>}
            </span>
            <ShowShopButton shop={shop} />
          </li>
        ))}
      </ul>
    </>
  );
}
