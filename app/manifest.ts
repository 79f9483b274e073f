import type { MetadataRoute } from 'next';

/** What a phone needs to keep this as an app of its own. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Bench & Bottle',
    short_name: 'Bench & Bottle',
    description: 'Sprayings, stock, cost and closed benches of a small plant shop.',
    start_url: '/today',
    scope: '/',
    display: 'standalone',
    background_color: '#f5f2e9',
    theme_color: '#f5f2e9',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
  };
}
