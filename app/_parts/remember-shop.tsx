'use client';

import { useEffect } from 'react';
import { DEVICE_SHOP, REMEMBERED_SECONDS } from '@/shared/device-shop';

/**
 * Lets a device remember the only shop there is, so that a second shop changes nothing for it. A choice that was made
 * meanwhile is not replaced: a script cannot write over it, and a page that was kept does not try.
 */
export function RememberShop({ shop }: { shop: string }) {
  useEffect(() => {
    const isKeptPage = document.documentElement.dataset.kept !== undefined;
    if (isKeptPage || document.cookie.split('; ').some((one) => one.startsWith(`${DEVICE_SHOP}=`))) return;
    const secure = location.protocol === 'https:' ? '; secure' : '';
    // biome-ignore lint/suspicious/noDocumentCookie: the cookie store of browsers is there over https only.
    document.cookie = `${DEVICE_SHOP}=${encodeURIComponent(shop)}; path=/; max-age=${REMEMBERED_SECONDS}; samesite=lax${secure}`;
  }, [shop]);
  return null;
}
