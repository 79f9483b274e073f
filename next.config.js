/** @type {import('next').NextConfig} */
export default {
  // Tests and a developer's server build into folders of their own, so that neither disturbs a running shop.
  distDir: process.env.BUILD_DIR || '.next',
  poweredByHeader: false,
  reactStrictMode: true,
  // `npm test` and `npm run check` check the types; starting the shop need not do it again.
  typescript: { ignoreBuildErrors: true },
  // The database driver is a native module and the solver finds its WebAssembly beside itself, so both are loaded by
  // Node and never bundled.
  serverExternalPackages: [
    ...['highs', 'better-sqlite3', 'pg', '@prisma/adapter-better-sqlite3', '@prisma/adapter-pg', '@prisma/client'],
  ],
  // Shop files are read by route handlers that count for themselves; forms stay small. A page that is not for somebody answers 403.
  experimental: { serverActions: { bodySizeLimit: '1mb' }, authInterrupts: true },
  // A build never depends on a picture service.
  images: { unoptimized: true },
  devIndicators: false,
  // A browser that has not read the page's own link to an icon yet asks for this one.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
};
